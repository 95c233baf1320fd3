import { test } from 'vitest';
import type { Tune } from '../../shared/music/tune.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { ownTunes } from './own-tunes.ts';
import { allTunes, realTunes, realTunesMissing } from './real-tunes.ts';

/** A tune's own ABC, and what to call it where something is wrong with it. */
export interface NamedTune {
  readonly name: string;
  readonly abc: string;
}

/**
 * Runs one check twice: on the project's own tunes, and on every so-many-th real one (on all of them
 * by `npm run test:corpus`). The second is skipped, and says why, where there are no real tunes.
 */
export function onTunes(
  what: string,
  every: number,
  check: (tunes: readonly NamedTune[]) => void | Promise<void>,
  tags: readonly 'slow'[] = [],
): void {
  const options = { tags: [...tags], timeout: 600_000 };
  test(`${what}: ${ownTunes.length} tunes of our own`, options, () => check(ownTunes));
  test(`${what}: real tunes`, options, async context => {
    context.skip(realTunesMissing !== null, realTunesMissing ?? '');
    await check(sampleOfReal(every));
  });
}

/** Every so-many-th real tune, or all; none where they are missing. */
export const sampleOfReal = (every: number): NamedTune[] =>
  realTunes()
    .filter((_, i) => allTunes || i % every === 0)
    .map(abc => ({ name: /^T:(.*)$/m.exec(abc)?.[1] ?? 'a tune without a title', abc }));

/** Tunes as they are read; real ones that cannot be read are left out. */
export const readTunes = (tunes: readonly NamedTune[]): Tune[] =>
  tunes.flatMap(({ name, abc }) => {
    const { tunes: read } = parseTunes({ text: abc, file: `${name}.abc`, line: 1, indent: 0 });
    return read.slice(0, 1);
  });
