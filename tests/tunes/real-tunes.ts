import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Real tunes and published standards, never part of this repository: in the folder that
 * `BOWBOOK_CORPUS` names, with `corpus/`, `corpus-bowed/` and `standards/` in it. `npm test` reads
 * none of it, whatever is named; `npm run test:all` does.
 */
const folder = process.env.BOWBOOK_CORPUS || null;

/** Why tests on real tunes are skipped; null where they are run. */
export const realTunesMissing = missing('corpus');

/** Why tests on tunes with printed bowing are skipped; null where they are run. */
export const bowedTunesMissing = missing('corpus-bowed');

/** Why tests on published standards are skipped; null where they are run. */
export const standardsMissing = missing('standards');

/** Whether all real tunes are tested on that can be, and not a sample: `npm run test:corpus`. */
export const allTunes = process.env.BOWBOOK_ALL_TUNES === '1';

export interface AbcFile {
  readonly name: string;
  readonly text: string;
}

/** The files of real tunes, many tunes in each; none where they are missing. */
export function realFiles(): AbcFile[] {
  if (folder === null || realTunesMissing !== null) return [];
  const corpus = join(folder, 'corpus');
  return readdirSync(corpus)
    .filter(name => name.endsWith('.abc'))
    .toSorted()
    .map(name => ({ name, text: readFileSync(join(corpus, name), 'utf8') }));
}

/** The text of each real tune, from its `X:` to the next; none where they are missing. */
export const realTunes = (): string[] =>
  realFiles().flatMap(({ text }) =>
    text.split(/^(?=X:)/m).filter(t => t.startsWith('X:') && /^K:/m.test(t)),
  );

/** The file of a book of 1883 with its printed bowing; none where it is missing. */
export const bowedFiles = (): AbcFile[] => {
  const name = 'ryan-1883.abc';
  return folder === null || bowedTunesMissing !== null
    ? []
    : [{ name, text: readFileSync(join(folder, 'corpus-bowed', name), 'utf8') }];
};

/** The text of each tune of that book; none where it is missing. */
export const bowedTunes = (): string[] =>
  bowedFiles().flatMap(({ text }) => text.split(/^(?=X:)/m));

/** A file or folder of the published standards. Throws where they are missing. */
export function standard(path: string): string {
  if (folder === null) throw new Error('BOWBOOK_CORPUS is not set');
  return join(folder, 'standards', path);
}

function missing(part: string): string | null {
  if (folder === null) return 'skipped: needs npm run test:all, and BOWBOOK_CORPUS';
  return existsSync(join(folder, part))
    ? null
    : `skipped: BOWBOOK_CORPUS names no folder with ${part}/ in it`;
}
