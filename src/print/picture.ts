import { NodeCompiler } from '@myriaddreamin/typst-ts-node-compiler';
import type { PrintContext } from './print-context.ts';

/** File name extensions of the pictures that the typesetter reads. */
const endings = /\.(png|jpe?g|gif|webp|svg)$/i;

/** Adds a picture of the book to the files of the print; or says why it cannot be printed. */
export function pictureValue(
  context: PrintContext,
  path: string,
): { readonly file: string } | { readonly why: 'kind' | 'missing' | 'broken' } {
  const file = `book/${path}`;
  if (context.files.has(file)) return { file: `/${file}` };
  if (!endings.test(path)) return { why: 'kind' };
  const content = context.input.picture(path);
  if (content === null) return { why: 'missing' };
  if (!opens(content, path)) return { why: 'broken' };
  context.files.set(file, content);
  return { file: `/${file}` };
}

/** Whether the typesetter can read a picture. Tried alone, since one bad file would make the whole print fail. */
function opens(content: Buffer, path: string): boolean {
  const compiler = NodeCompiler.create({ workspace: '/bowbook-picture' });
  const name = `/picture${endings.exec(path)?.[0] ?? ''}`;
  compiler.mapShadow(`/bowbook-picture${name}`, content);
  return compiler.compile({ mainFileContent: `#image("${name}")` }).result !== null;
}
