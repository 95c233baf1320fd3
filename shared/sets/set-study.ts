import type { Direction, Edit } from '../bowing/bowing.ts';
import { practiceTempo } from '../bowing/practice-time.ts';
import type { BowingSettings } from '../bowing/settings.ts';
import { compare, fraction, toNumber } from '../music/fraction.ts';
import type { Tune } from '../music/tune.ts';
import type { Study } from '../study.ts';
import { joinMend } from './join-mend.ts';
import { type KeyChange, keyChange } from './key-change.ts';

/** A tune of a set: its study, how its strokes were asked for, and the times it is played through. */
export interface SetTune {
  readonly study: Study;
  readonly start: Direction | null;
  readonly restart: 'part' | null;
  readonly times: number;
}

/** Seconds at the slow and the session tempo of the book; one tempo where a tune has no type. */
export interface SetLength {
  readonly slow: number;
  readonly session: number;
}

/** Where one tune ends and the next begins, or the same begins again. Indices are into the set. */
export interface SetJoin {
  readonly from: number;
  readonly to: number;
  /** The stroke before the join, and the one that the tune after it begins with. */
  readonly last: Direction;
  readonly first: Direction;
  /** Strokes go on alternating over the join. */
  readonly agrees: boolean;
  /** Where they do not: what leaves time to lift the bow and start again. */
  readonly room: 'rest' | 'long-note' | null;
  /** Where they do not: the smallest change to the slurs of the tune before that turns its end round. */
  readonly mend: Edit | null;
  readonly key: KeyChange;
}

export interface SetStudy {
  /** Of each tune, all its times through. */
  readonly lengths: readonly SetLength[];
  readonly length: SetLength;
  readonly joins: readonly SetJoin[];
}

/**
 * A set as it is played: how long it takes, and what the bow and the hand meet at each join.
 *
 * A tune is begun on its own first stroke each time through. So there are joins of two kinds: from
 * each tune to the next, and, where a tune is played more than once, from its end to its beginning.
 * A tune that ends on an up-bow and one that begins down go straight on; where both strokes are the
 * same, the bow has to be lifted, or a slur before the end has to change.
 */
export function studySet(tunes: readonly SetTune[], bowing: BowingSettings): SetStudy {
  const lengths = tunes.map(tune => lengthOf(tune, bowing));
  const joins = tunes.flatMap((tune, i) => {
    const next = tunes[i + 1];
    return [
      ...(tune.times > 1 ? joinOf(tune, tune, i, i, bowing) : []),
      ...(next ? joinOf(tune, next, i, i + 1, bowing) : []),
    ];
  });
  const sum = (pace: keyof SetLength): number => lengths.reduce((s, l) => s + l[pace], 0);
  return { lengths, length: { slow: sum('slow'), session: sum('session') }, joins };
}

/** Whole notes of one time through, by the seconds of one at each tempo. */
function lengthOf({ study, times }: SetTune, bowing: BowingSettings): SetLength {
  const { tune, performance } = study;
  const { beat, bpm } = practiceTempo(tune, bowing);
  const beats = (times * toNumber(performance.length)) / toNumber(beat);
  const session = (tune.type && bowing.tempi[tune.type]?.session) || bpm;
  return { slow: (beats / bpm) * 60, session: (beats / session) * 60 };
}

function joinOf(
  tune: SetTune,
  next: SetTune,
  from: number,
  to: number,
  bowing: BowingSettings,
): SetJoin[] {
  const last = tune.study.bowing.plan.strokes.at(-1)?.direction;
  const first = next.study.bowing.plan.strokes[0]?.direction;
  if (!last || !first) return []; // a tune without a note
  const agrees = last !== first;
  return [
    {
      from,
      to,
      last,
      first,
      agrees,
      room: agrees ? null : roomAt(tune.study, next.study),
      mend: agrees ? null : joinMend(tune, first, bowing),
      key: keyChange(closingKey(tune.study), openingKey(next.study)),
    },
  ];
}

/** A last note of a crotchet or more can be cut short. */
const longNote = fraction(1, 4);

function roomAt({ tune, performance }: Study, next: Study): SetJoin['room'] {
  const last = performance.notes.at(-1);
  const written = last ? tune.events[last.tied.at(-1) ?? last.event] : undefined;
  if (!last || written?.kind !== 'note') return null;
  const restBefore =
    next.tune.events[next.tune.bars[next.performance.bars[0]?.bar ?? 0]?.first ?? 0];
  if (endsInRest(tune, performance) || written.breath || restBefore?.kind === 'rest') return 'rest';
  return compare(last.duration, longNote) >= 0 ? 'long-note' : null;
}

function endsInRest(tune: Tune, performance: Study['performance']): boolean {
  const bar = tune.bars[performance.bars.at(-1)?.bar ?? -1];
  return bar !== undefined && tune.events[bar.end - 1]?.kind === 'rest';
}

const openingKey = ({ tune, performance }: Study) =>
  tune.bars[performance.bars[0]?.bar ?? 0]?.key ?? tune.key;

const closingKey = ({ tune, performance }: Study) =>
  tune.bars[performance.bars.at(-1)?.bar ?? 0]?.key ?? tune.key;
