import type { Direction, Edit } from '../bowing/bowing.ts';
import { pacesOf, secondsOfNotes } from '../bowing/paces.ts';
import type { BowingSettings } from '../bowing/settings.ts';
import { compare, type Fraction, fraction, toNumber } from '../music/fraction.ts';
import { isHalved } from '../music/meter.ts';
import type { Bar, Key, Tune } from '../music/tune.ts';
import { at, got } from '../must.ts';
import type { Study } from '../study.ts';
import { joinMend, type RequestedTune } from './join-mend.ts';
import { type KeyChange, keyChange } from './key-change.ts';

/** A tune of a set, and how many times it is played through. */
export interface SetTune extends RequestedTune {
  readonly times: number;
}

/** Seconds at the tune's slow and session tempo. */
export interface SetLength {
  readonly slow: number;
  readonly session: number;
}

/** The join from one tune to the next, or from the end of a tune to its repetition. */
export interface SetJoin {
  /** Indices of the two tunes in the set; the same where a tune is repeated. */
  readonly from: number;
  readonly to: number;
  /** Last stroke before the join, and first stroke after it. */
  readonly last: Direction;
  readonly first: Direction;
  /** `last` and `first` differ: the strokes go on alternating. */
  readonly agrees: boolean;
  /** Why there is time to lift the bow at the join; null where there is none, or the strokes agree. */
  readonly room: 'rest' | 'long-note' | null;
  /** Smallest slur change in the tune before that makes the strokes agree; null where there is none, or they do. */
  readonly mend: Edit | null;
  readonly key: KeyChange;
}

export interface SetStudy {
  /** One per tune, all its repetitions included. */
  readonly lengths: readonly SetLength[];
  /** The whole set. */
  readonly length: SetLength;
  readonly joins: readonly SetJoin[];
}

/**
 * Studies a set as it is played: its length, and the strokes and keys at each join. Joins are in playing
 * order: from each tune to the next, and once from the end of a tune to its beginning where it is
 * repeated. A tune without notes has no joins.
 *
 * Each time through a tune begins on its own first stroke. Where the last stroke before a join is the
 * same as the first after it, the bow has to be lifted or a slur before the end has to change. Each
 * such join costs one study of the tune before it (`joinMend`).
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

/** Seconds of all times through a tune. */
function lengthOf({ study, times }: SetTune, bowing: BowingSettings): SetLength {
  const { tune, performance } = study;
  const { beat, perMinute } = pacesOf(tune, bowing);
  const length = times * toNumber(performance.length);
  const secondsAt = (bpm: number): number => secondsOfNotes({ beat, bpm }, length);
  return { slow: secondsAt(perMinute.slow), session: secondsAt(perMinute.session) };
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

/** A last note of a crotchet or more can be cut short to lift the bow, of a quaver in a halved 2/4 (common practice). */
const longNote = (tune: Tune): Fraction => fraction(1, isHalved(tune) ? 8 : 4);

type Played = Pick<Study, 'tune' | 'performance'>;

function roomAt({ tune, performance }: Played, next: Played): SetJoin['room'] {
  const last = at(performance.notes, performance.notes.length - 1);
  const written = at(tune.events, last.tied.at(-1) ?? last.event);
  const opening = at(next.tune.events, barPlayed(next, 0).first);
  const breath = written.kind === 'note' && written.breath;
  if (endsInRest({ tune, performance }) || breath || opening.kind === 'rest') return 'rest';
  return compare(last.duration, longNote(tune)) >= 0 ? 'long-note' : null;
}

/** A study's bar as played, counted from 0, or from the end where `index` is negative. */
function barPlayed({ tune, performance }: Played, index: number): Bar {
  return at(tune.bars, got(performance.bars.at(index), 'bar played').bar);
}

function endsInRest(played: Played): boolean {
  return at(played.tune.events, barPlayed(played, -1).end - 1).kind === 'rest';
}

const openingKey = (played: Played): Key => barPlayed(played, 0).key;
const closingKey = (played: Played): Key => barPlayed(played, -1).key;
