import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const folder = join(import.meta.dirname, '../../../shared/corpus');

/** Up to `count` tunes of the corpus beside the project, spread evenly; none where it is absent. */
export function corpusTunes(count: number): readonly string[] {
  if (!existsSync(folder)) {
    console.log('skipped: no corpus of tunes beside the project');
    return [];
  }
  const all = readdirSync(folder)
    .filter(name => name.endsWith('.abc'))
    .sort()
    .flatMap(name => readFileSync(join(folder, name), 'utf8').split(/\n(?=X:)/))
    .filter(text => /^X:/.test(text) && /^K:/m.test(text));
  const every = Math.max(1, Math.floor(all.length / count));
  return all.filter((_, i) => i % every === 0).slice(0, count);
}
