import type { Dice } from '../../shared/drills/dice.ts';
import type { DraftBar } from './phrase.ts';

/** How a tune is slurred: of ten beats with notes to slur, how many are, and whether slurs cross bars. */
export interface SlurStyle {
  readonly often: number;
  readonly acrossBars: boolean;
}

/** Slurs notes of a phrase, beam by beam: its first two, its last two, or all of it. */
export function slurPhrase(dice: Dice, bars: readonly DraftBar[], style: SlurStyle): void {
  for (const bar of bars) {
    for (const beam of beamsOf(bar)) {
      if (beam.length < 2 || dice.below(10) >= style.often) continue;
      const [from, to] = dice.pick([
        [0, 1],
        [beam.length - 2, beam.length - 1],
        [0, Math.min(3, beam.length - 1)],
      ] as const);
      const [first, last, before] = [beam[from], beam[to], beam[to - 1]];
      if (!first || !last || !before || isBroken(last)) continue;
      if (last.tied && isBroken(before)) continue; // abcjs cannot read `(c>B-)`
      first.opensSlur = true;
      last.closesSlur = true;
    }
  }
  if (!style.acrossBars) return;
  joinBars(bars, (before, after) => {
    before.opensSlur = true;
    after.closesSlur = true;
  });
}

/** Holds the last note of each bar of a phrase over into the next. */
export function tieBars(bars: readonly DraftBar[]): void {
  joinBars(bars, (a, b) => {
    a.tied = true;
    b.pitch = a.pitch;
  });
}

/** Does something to the notes on both sides of each bar line that no slur and no broken pair touches. */
function joinBars(
  bars: readonly DraftBar[],
  join: (before: DraftBar[number], after: DraftBar[number]) => void,
): void {
  bars.forEach((bar, i) => {
    const [before, after] = [bar.at(-1), bars[i + 1]?.[0]];
    if (!before || !after || [before, after].some(n => n.opensSlur || n.closesSlur)) return;
    if (!isBroken(after)) join(before, after);
  });
}

/** Notes from one space to the next. */
function beamsOf(bar: DraftBar): DraftBar[] {
  const beams: DraftBar[] = [];
  for (const note of bar) {
    if (note.spaced || beams.length === 0) beams.push([]);
    beams.at(-1)?.push(note);
  }
  return beams;
}

const isBroken = ({ length }: DraftBar[number]): boolean => /[<>]/.test(length);
