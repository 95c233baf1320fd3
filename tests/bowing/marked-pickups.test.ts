import { expect, test } from 'vitest';
import { bowingInput } from '../../shared/bowing/bowing-input.ts';
import { layScore } from '../../shared/bowing/lay-strokes.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import type { Direction, Tune } from '../../shared/music/tune.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { bowedTunes, bowedTunesMissing } from '../tunes/real-tunes.ts';

/** The sign that a book prints in the pickup of a tune, and the stroke laid there without it. */
function pickupOf(tune: Tune): { printed: Direction; laid: Direction | undefined } | null {
  const performance = playedOrder(tune);
  const [opening] = performance.bars;
  if (!opening || tune.bars[opening.bar]?.pickup !== true) return null;
  const unmarked = tune.events.map(e => (e.kind === 'note' ? { ...e, mark: null } : e));
  const plan = layScore(bowingInput({ ...tune, events: unmarked }, performance));
  for (let k = opening.first; k < opening.end; k++) {
    const event = tune.events[performance.notes[k]?.event ?? -1];
    if (event?.kind === 'note' && event.mark !== null) {
      return { printed: event.mark, laid: plan.strokes[plan.strokeOf[k] ?? -1]?.direction };
    }
  }
  return null;
}

/**
 * The pickups that open the tunes of half of Ryan's Mammoth Collection, Boston 1883 (public domain),
 * in a transcription by volunteers. In the whole book, pickups of later parts counted in, 97 % of
 * 1,339 are marked so that the first full bar begins down; half of it may be a little off that.
 */
test('pickups are laid as 1883 marks them: real tunes with printed bowing', context => {
  context.skip(bowedTunesMissing !== null, bowedTunesMissing ?? '');
  const pickups = bowedTunes().flatMap(text => {
    const [tune] = parseTunes({ text, file: 'ryan-1883.abc', line: 1, indent: 0 }).tunes;
    const pickup = tune ? pickupOf(tune) : null;
    return pickup ? [pickup] : [];
  });
  const alike = pickups.filter(p => p.printed === p.laid).length;
  expect(pickups.length).toBeGreaterThan(200);
  expect(alike / pickups.length).toBeGreaterThan(0.95);
});
