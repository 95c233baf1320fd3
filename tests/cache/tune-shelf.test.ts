import { describe, expect, it } from 'vitest';
import { tuneShelf } from '../../src/incremental/tune-shelf.ts';
import type { TuneTask } from '../../src/pipeline/tune-jobs.ts';
import type { PlacedTune, TuneMaker } from '../../src/workers/tune-maker.ts';

const tasks = ['kelp', 'lamp', 'rope'].map(
  id => ({ key: id, job: { block: { id } }, pages: [], isShared: false }) as unknown as TuneTask,
);
const site = { keepAll: () => false, place: { folder: 'site', staging: '.bowbook-site' } };

/** A shelf whose maker writes down how its work ended. */
function shelf(): { readonly placed: () => AsyncGenerator<PlacedTune>; readonly ends: string[] } {
  const ends: string[] = [];
  const maker: Pick<TuneMaker, 'make'> = {
    async *make(asked) {
      let end = 'left';
      try {
        for (const { key } of asked)
          yield { note: { id: key }, files: [] } as unknown as PlacedTune;
        end = 'done';
      } finally {
        ends.push(end);
      }
    },
  };
  const makePage = async (): Promise<readonly string[]> => [];
  const tunes = tuneShelf(tasks, { maker: maker as TuneMaker, known: new Map(), makePage });
  return { placed: () => tunes.placed(site), ends };
}

describe('whoever makes the tunes is told that no more will be asked for', () => {
  it('when all have been placed', async () => {
    const { placed, ends } = shelf();
    const ids: string[] = [];
    for await (const { note } of placed()) ids.push(note.id);
    expect([ids, ends]).toEqual([['kelp', 'lamp', 'rope'], ['done']]);
  });

  it('when the build fails in the middle', async () => {
    const { placed, ends } = shelf();
    const build = async (): Promise<void> => {
      for await (const { note } of placed()) if (note.id === 'lamp') throw new Error('disk full');
    };
    await expect(build()).rejects.toThrow('disk full');
    expect(ends).toEqual(['left']);
  });
});
