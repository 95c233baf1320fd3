import { expect, it, vi } from 'vitest';
import { wordsFor } from '../../shared/words/words-for.ts';
import { drawTune } from '../../src/pipeline/draw-tune.ts';
import { studyTunes } from '../../src/pipeline/pipeline.ts';
import { bookOf } from '../../src/read/book-of.ts';

/** An engraver that gives up, as ours might on a tune that nobody has tried. */
vi.mock('../../src/engrave/engrave-tune.ts', () => ({
  engraveTune: () => {
    throw new Error('no room for the clef\nat the second line');
  },
}));

it('a tune that the engraver fails on is told of, in one line, and its study stays', async () => {
  const texts = new Map([
    ['bowbook.yaml', 'title: Tuesday Fiddles at the Ice House\nrights: own\n'],
    ['tunes/kelp.md', '```abc\nX:1\nT:Kelp Cutters\nM:4/4\nL:1/8\nK:G\nGABc dBGB|A4 G4|\n```\n'],
  ]);
  const { tunes } = await studyTunes(bookOf('book', { texts, media: [] }), () => {});
  const [tune] = tunes;
  if (!tune) throw new Error('the tune was not read');
  const { built, problems } = drawTune(tune, wordsFor('en', 'letters'));
  expect(problems).toMatchObject([
    {
      rule: 'drawing-failed',
      severity: 'warning',
      place: { file: 'tunes/kelp.md', line: 1 },
      facts: { tune: 'Kelp Cutters' },
      actual: 'no room for the clef',
    },
  ]);
  expect(built.score).toBeNull();
  expect(built.study?.tune.title).toBe('Kelp Cutters');
});
