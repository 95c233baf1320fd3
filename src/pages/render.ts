import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import Handlebars from 'handlebars';
import type { Words } from '../../shared/words/words-for.ts';
import { packageRoot } from './package-root.ts';

/**
 * The one doorway to Handlebars. Templates are named by their path under `templates/`
 * (`parts/map`), and each may use any other as a partial. Escaping is on and strict: a field that
 * a view lacks is a defect of ours and throws. HTML made elsewhere passes only as `Html`.
 */
export type Html = Handlebars.SafeString;

/** Marks a string as finished HTML. For the body maker, the engraver and `render` alone. */
export const html = (text: string): Html => new Handlebars.SafeString(text);

const engine = Handlebars.create();
const compiled = new Map<string, Handlebars.TemplateDelegate>();

/** Fills a template. The site's labels, in the book's language, are at `words` in every view. */
export function render(template: string, view: object, { siteWords }: Words): string {
  if (compiled.size === 0) loadTemplates();
  const fill = compiled.get(template);
  if (!fill) throw new Error(`there is no template ${template}`);
  return fill({ words: siteWords, ...view });
}

function loadTemplates(): void {
  const root = join(packageRoot(), 'templates');
  for (const entry of readdirSync(root, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !entry.name.endsWith('.hbs')) continue;
    const file = join(entry.parentPath, entry.name);
    const name = relative(root, file).split(sep).join('/').slice(0, -'.hbs'.length);
    const fill = engine.compile(readFileSync(file, 'utf8'), { strict: true });
    compiled.set(name, fill);
    engine.registerPartial(name, fill);
  }
}
