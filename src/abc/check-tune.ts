import { completes, isShort } from '../../shared/music/bar-length.ts';
import { compare, fractionText } from '../../shared/music/fraction.ts';
import { meterLength, meterText } from '../../shared/music/meter.ts';
import { noteAt } from '../../shared/music/note-at.ts';
import { pitchName } from '../../shared/music/pitch.ts';
import { longestPerformance, unroll } from '../../shared/music/played-order.ts';
import type { Bar, NoteEvent, Tune } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';
import { type Problem, type ProblemRest, problem } from '../../shared/problem.ts';
import type { Rule } from '../../shared/rules.ts';
import type { DraftBar } from './draft-bar.ts';
import type { Locate } from './locate.ts';

/**
 * Finds what is wrong with a tune as written, beyond what abcjs says: it is silent about slurs left
 * open and about bars that do not add up. `drafts` are the bars that the tune was assembled from.
 */
export function checkTune(tune: Tune, drafts: readonly DraftBar[], locate: Locate): Problem[] {
  const closed = drafts.map(d => d.closed);
  return [
    ...checkBars(tune, closed),
    ...checkEndings(tune),
    ...checkSlurs(tune, drafts, locate),
    ...checkTies(tune, locate),
    ...checkAccidentals(tune, drafts, locate),
  ];
}

/** A tie, as written, whose next note is a rest or another pitch, inside one stretch of music. */
function checkTies(tune: Tune, locate: Locate): Problem[] {
  return tune.events.flatMap((event, i) => {
    if (event.kind === 'rest' || !event.tied) return [];
    const next = tune.events[i + 1];
    const bar = at(tune.bars, event.bar);
    const following = next && at(tune.bars, next.bar);
    // Where the music turns back or chooses an ending, what comes next is not on the page.
    if (following !== bar && (bar.closesRepeat > 1 || following?.endings.length)) return [];
    const joined =
      next?.kind === 'note' && event.pitches.some(p => next.pitches.some(q => q.midi === p.midi));
    return joined
      ? []
      : [problem('tie-to-nothing', locate(event.start), { facts: { note: event.id } })];
  });
}

/**
 * ABC 2.1 carries an accidental through every octave of its bar; most players, reading the page,
 * carry it in its own octave only. Where the two differ the teacher should say.
 */
function checkAccidentals(tune: Tune, drafts: readonly DraftBar[], locate: Locate): Problem[] {
  const problems: Problem[] = [];
  drafts.forEach((draft, i) => {
    draft.events.forEach((drafted, k) => {
      if (!drafted.elsewhere) return;
      const event = noteAt(tune, at(tune.bars, i).first + k);
      problems.push(
        problem('accidental-elsewhere', locate(event.start), {
          facts: { note: event.id },
          actual: pitchName(drafted.elsewhere.read),
          expected: [pitchName(drafted.elsewhere.otherwise)],
        }),
      );
    });
  });
  return problems;
}

/**
 * Bars that do not add up. A short bar is right when it is a pickup, or when a short bar that
 * comes before or after it, in the tune as played or begun again, makes it full.
 */
function checkBars(tune: Tune, closed: readonly boolean[]): Problem[] {
  const problems: Problem[] = [];
  const { bars: played, cut } = unroll(tune);
  if (cut) {
    problems.push(
      problem('too-long-to-play', at(tune.bars, 0).place, {
        facts: { notes: longestPerformance },
      }),
    );
  }
  const excused = new Set<number>(tune.bars.flatMap((b, i) => (b.pickup ? [i] : [])));
  const excuse = (i: number, j: number): void => {
    const [a, b] = [at(tune.bars, i), at(tune.bars, j)];
    if (!isShort(a) || !isShort(b) || !completes(a, b)) return;
    excused.add(i);
    excused.add(j);
  };
  for (let k = 0; k + 1 < played.length; k++) {
    const [i, j] = [at(played, k), at(played, k + 1)];
    if (j !== i + 1 || atSign(tune.bars, i, j, closed)) excuse(i, j);
  }
  if (played.length > 0) excuse(at(played, played.length - 1), at(played, 0));
  for (const part of tune.parts) {
    const pickup = part.bars.find(b => at(tune.bars, b).pickup);
    if (pickup === undefined) continue;
    for (const i of part.bars) {
      const [bar, next] = [at(tune.bars, i), tune.bars[i + 1]];
      const last = bar.closesRepeat > 1 || bar.closesPart || next?.part !== bar.part;
      if (last) excuse(i, pickup);
    }
  }
  tune.bars.forEach((bar, i) => {
    const full = meterLength(bar.meter);
    if (!full) return;
    const difference = compare(bar.length, full);
    if (difference === 0 || (difference < 0 && excused.has(i))) return;
    problems.push(
      problem('bar-length', bar.place, {
        facts: {
          bar: bar.name,
          meter: meterText(bar.meter),
          by: difference > 0 ? 'long' : 'short',
        },
        actual: fractionText(bar.length),
        expected: [fractionText(full)],
      }),
    );
  });
  return problems;
}

/** Whether a repeat sign, double bar or ending parts two neighbouring bars, or no bar line does. */
function atSign(bars: readonly Bar[], i: number, j: number, closed: readonly boolean[]): boolean {
  const [a, b] = [at(bars, i), at(bars, j)];
  return (
    !at(closed, i) ||
    a.closesRepeat > 1 ||
    a.closesPart ||
    b.opensRepeat ||
    a.part !== b.part ||
    a.endings.join() !== b.endings.join()
  );
}

/** Endings whose numbers leave a time through without one, or give one twice. */
function checkEndings(tune: Tune): Problem[] {
  const problems: Problem[] = [];
  let group: { bar: Bar; numbers: number[] } | null = null;
  const finish = (): void => {
    if (!group) return;
    const { bar, numbers } = group;
    const highest = Math.max(...numbers);
    const expected = Array.from({ length: Math.max(highest, 2) }, (_, n) => n + 1);
    const sorted = [...numbers].sort((a, b) => a - b);
    if (sorted.join() !== expected.join()) {
      problems.push(
        problem('endings-mismatch', bar.place, {
          facts: { bar: bar.name },
          actual: sorted.join(', '),
          expected: [expected.join(', ')],
        }),
      );
    }
    group = null;
  };
  let before = '';
  for (const bar of tune.bars) {
    const numbers = bar.endings.join();
    if (numbers === '') finish();
    else if (numbers !== before || !group) {
      if (group) group.numbers.push(...bar.endings);
      else group = { bar, numbers: [...bar.endings] };
    }
    before = numbers;
  }
  finish();
  return problems;
}

/**
 * Slurs. Only the depth is kept, since abcjs closes the oldest of nested slurs: a stroke is a run
 * of notes over which the depth stays above nought.
 */
function checkSlurs(tune: Tune, drafts: readonly DraftBar[], locate: Locate): Problem[] {
  const drafted = drafts.flatMap(d => d.events);
  const problems: Problem[] = [];
  let depth = 0;
  let opener: NoteEvent | null = null;
  let bar = -1;
  let said = false;
  let tiedOn = false;
  let lastNote: NoteEvent | null = null;
  let fromRest = 0;
  const say = <R extends Rule>(rule: R, at: number, ...rest: ProblemRest<R>): void => {
    problems.push(problem(rule, locate(at), ...rest));
  };
  for (let i = 0; i < tune.events.length; i++) {
    const event = at(tune.events, i);
    const { opened, closed } = at(drafted, i).restSlurs;
    const { name } = at(tune.bars, event.bar);
    if (event.bar !== bar) {
      const before = tune.bars[bar];
      const here = tune.bars[event.bar];
      const overSign = (before?.closesRepeat ?? 1) > 1 || here?.opensRepeat === true;
      if (depth > 0 && opener && overSign && !said) {
        say('slur-over-repeat', opener.start, { facts: { note: opener.id, bar: name } });
        said = true;
      }
      bar = event.bar;
    }
    if (event.kind === 'rest') {
      tiedOn = false;
      const inside = depth > 0 ? opener : closed > 0 ? lastNote : null;
      if (inside) say('slur-over-rest', event.start, { facts: { note: inside.id, bar: name } });
      else if (opened > 0) say('slur-on-rest', event.start, { facts: { bar: name } });
      fromRest += opened;
      continue;
    }
    if (event.mark && depth > 0 && opener) {
      say('mark-inside-slur', event.start, {
        facts: { note: event.id, first: opener.id, mark: event.mark },
      });
    } else if (event.mark && tiedOn) {
      say('mark-on-tied-note', event.start, { facts: { note: event.id, mark: event.mark } });
    }
    tiedOn = event.tied;
    if (depth === 0 && event.slursOpened > 0) {
      opener = event;
      said = false;
    }
    depth += event.slursOpened - event.slursClosed;
    if (depth < 0) {
      if (depth + fromRest < 0) say('slur-not-opened', event.start, { facts: { note: event.id } });
      fromRest = 0;
      depth = 0;
    }
    lastNote = event;
    if (depth === 0) opener = null;
  }
  if (opener) say('slur-open', opener.start, { facts: { note: opener.id } });
  return problems;
}
