import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';

/** Where the bundle's own hash is kept, so that a build need not read the whole program. */
export const hashFile = 'dist/bowbook.hash';

/**
 * A hash of the program itself: its code, its templates, the packages it was installed with, and the
 * Node that runs it. What another program made is not taken over. `root`: the folder of Bowbook.
 */
export const programHash = (root: string): string =>
  sumOf([
    process.version,
    import.meta.url.endsWith('.ts')
      ? codeHash(root, ['src', 'shared'])
      : readFileSync(join(root, hashFile), 'utf8'),
  ]);

/** What the hash of the bundled program is made of. */
export const bundledHash = (root: string): string =>
  codeHash(root, ['dist/bowbook.cjs', 'dist/browser', 'dist/offline', 'dist/styles']);

function codeHash(root: string, code: readonly string[]): string {
  const names = [...code, 'templates', 'package.json', 'package-lock.json'];
  const files = names.flatMap(name => filesIn(join(root, name)));
  return sumOf(files.flatMap(file => [relative(root, file), readFileSync(file)]));
}

function sumOf(parts: readonly (string | Uint8Array)[]): string {
  const sum = createHash('sha256');
  for (const part of parts) sum.update(part);
  return sum.digest('hex');
}

/** The file itself, or every file under the folder; none where it is missing. */
function filesIn(path: string): readonly string[] {
  const stats = statSync(path, { throwIfNoEntry: false });
  if (!stats?.isDirectory()) return stats ? [path] : [];
  return readdirSync(path, { withFileTypes: true })
    .filter(entry => entry.isFile() || entry.isDirectory())
    .map(entry => join(path, entry.name))
    .sort()
    .flatMap(filesIn);
}
