import { describe, expect, it } from 'vitest';
import { rememberedTunes } from '../../src/incremental/remembered-tunes.ts';
import type { StagedTune } from '../../src/pipeline/made-tune.ts';
import type { TuneSource } from '../../src/pipeline/tune-source.ts';
import type { TuneTask } from '../../src/pipeline/tune-task.ts';
import type { TuneMaker } from '../../src/workers/tune-maker.ts';

const tasks = ['kelp', 'lamp', 'rope'].map(
  id =>
    ({ inputHash: id, job: { block: { id } }, pages: [], isShared: false }) as unknown as TuneTask,
);
const site = { keepUnchanged: () => false, place: { folder: 'site', staging: '.bowbook-site' } };

/** Tunes whose maker writes down how its work ended. */
function watched(): { readonly made: TuneSource['made']; readonly ends: string[] } {
  const ends: string[] = [];
  const maker: Pick<TuneMaker, 'make'> = {
    async *make(asked) {
      let end = 'left';
      try {
        for (const { inputHash: id } of asked)
          yield { summary: { card: { id } }, files: [] } as unknown as StagedTune;
        end = 'done';
      } finally {
        ends.push(end);
      }
    },
  };
  const store = { built: () => undefined, opening: () => undefined, keep: () => {} };
  const remembered = { summaries: new Map(), store, maker: maker as TuneMaker };
  return { made: rememberedTunes(tasks, remembered).made, ends };
}

describe('whoever makes the tunes is told that no more will be asked for', () => {
  it('when all have been made', async () => {
    const { made, ends } = watched();
    const ids: string[] = [];
    for await (const { summary } of made(site)) ids.push(summary.card.id);
    expect([ids, ends]).toEqual([['kelp', 'lamp', 'rope'], ['done']]);
  });

  it('when the build fails in the middle', async () => {
    const { made, ends } = watched();
    const build = async (): Promise<void> => {
      for await (const { summary } of made(site))
        if (summary.card.id === 'lamp') throw new Error('disk full');
    };
    await expect(build()).rejects.toThrow('disk full');
    expect(ends).toEqual(['left']);
  });
});
