import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * A hash of the program itself: its code, bundled or not, its templates, the packages it was
 * installed with, and the Node that runs it. What another program made is not taken over.
 */
export function programHash(root: string): string {
  const bundled = fileURLToPath(import.meta.url).endsWith('.js');
  // The names of a bundle's parts, which its entries import, are hashes themselves.
  const code = bundled
    ? ['dist/cli.js', 'dist/tune-worker.js', 'dist/browser', 'dist/offline', 'dist/styles']
    : ['src', 'shared'];
  const sum = createHash('sha256').update(process.version);
  for (const name of [...code, 'templates', 'package.json', 'package-lock.json']) {
    for (const file of filesIn(join(root, name))) sum.update(file).update(readFileSync(file));
  }
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
