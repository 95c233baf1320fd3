import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize, relative } from 'node:path';

const root = join(import.meta.dirname, '../..');

/** An import of a file, or what it exports of another. Paths are from the project's root. */
export interface ImportLine {
  readonly from: string;
  /** A file of the project, or a package name. */
  readonly to: string;
  /** It takes types alone, so that nothing of it is left when the program runs. */
  readonly typeOnly: boolean;
}

/** The TypeScript files below a folder of the project. */
export const filesIn = (folder: string): string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith('.ts'))
    .map(name => join(folder, name));

export const textOf = (file: string): string => readFileSync(join(root, file), 'utf8');

/** Every import of the files below a folder, those made while the program runs among them. */
export function importLines(folder: string): ImportLine[] {
  return filesIn(folder).flatMap(from => {
    const found = textOf(from).matchAll(
      /^(?:import|export)\s+(type\s)?([^;'"=]*?)\bfrom\s+['"]([^'"]+)['"]|^import\s+['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]/gm,
    );
    return [...found].map(([, type, names, ...targets]) => {
      const target = targets.find(t => t !== undefined) ?? '';
      const to = target.startsWith('.')
        ? relative(root, normalize(join(root, dirname(from), target)))
        : target;
      return { from, to, typeOnly: type !== undefined || namesTypes(names) };
    });
  });
}

/** `{ type A, type B }` */
const namesTypes = (names = ''): boolean => /^\{(?:\s*type\s[^,}]*,?)+\s*\}\s*$/.test(names);

/** The first circle of imports that is found, its first file named again at its end; null if none. */
export function circleIn(lines: readonly ImportLine[]): readonly string[] | null {
  const importsOf = new Map<string, string[]>();
  for (const { from, to } of lines) importsOf.set(from, [...(importsOf.get(from) ?? []), to]);
  const done = new Set<string>();
  const search = (file: string, path: readonly string[]): readonly string[] | null => {
    if (path.includes(file)) return [...path.slice(path.indexOf(file)), file];
    if (done.has(file)) return null;
    for (const to of importsOf.get(file) ?? []) {
      const circle = search(to, [...path, file]);
      if (circle) return circle;
    }
    done.add(file);
    return null;
  };
  for (const file of importsOf.keys()) {
    const circle = search(file, []);
    if (circle) return circle;
  }
  return null;
}
