import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Real tunes to run on, beside the project where they are kept at all; never part of it. */
const folder = join(import.meta.dirname, '../../../shared/corpus');

export const corpusMissing = existsSync(folder)
  ? null
  : 'skipped: no corpus of real tunes beside the project (../shared/corpus)';

/** Tests that take long look at every tune only where `BOWBOOK_ALL_TUNES=1` asks for it. */
export const allTunes = process.env.BOWBOOK_ALL_TUNES === '1';

export interface CorpusFile {
  readonly name: string;
  readonly text: string;
}

export function corpusFiles(): CorpusFile[] {
  if (corpusMissing !== null) return [];
  return readdirSync(folder)
    .filter(name => name.endsWith('.abc'))
    .toSorted()
    .map(name => ({ name, text: readFileSync(join(folder, name), 'utf8') }));
}
