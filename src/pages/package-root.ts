import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * The folder of Bowbook itself, which holds `templates/` and its `node_modules`. The code runs from
 * `src/pages/` in tests and from `dist/` when bundled, so it walks up to the folder of templates.
 */
export function packageRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'templates', 'frames'))) {
    const parent = dirname(folder);
    if (parent === folder) throw new Error('templates/ is missing beside the program');
    folder = parent;
  }
  return folder;
}
