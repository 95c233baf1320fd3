import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';

/** Paths of the code: the sources where the program runs unbundled, as in the tests, else the bundles. */
const code = import.meta.url.endsWith('.ts')
  ? ['src', 'shared']
  : ['dist/bowbook.cjs', 'dist/browser', 'dist/offline', 'dist/styles'];

/**
 * Hash of the program: its code, templates, installed packages and the version of Node, so that results
 * of another version are not used. `root`: the folder of Bowbook. Reads some 6 MB, in about 10 ms.
 */
export function programHash(root: string): string {
  const names = [...code, 'templates', 'package.json', 'package-lock.json'];
  const files = names.flatMap(name => filesIn(join(root, name)));
  const sum = createHash('sha256').update(process.version);
  for (const file of files) sum.update(relative(root, file)).update(readFileSync(file));
  return sum.digest('hex');
}

/** A file itself, or all files under a folder, sorted; empty where the path is missing. */
function filesIn(path: string): readonly string[] {
  const stats = statSync(path, { throwIfNoEntry: false });
  if (!stats?.isDirectory()) return stats ? [path] : [];
  return readdirSync(path, { withFileTypes: true })
    .filter(entry => entry.isFile() || entry.isDirectory())
    .map(entry => join(path, entry.name))
    .sort()
    .flatMap(filesIn);
}
