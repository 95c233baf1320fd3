import { at } from '../must.ts';
import type { Day } from './day.ts';
import { dueDay, intervalOf, type ReviewState, type ReviewTune, stateOf } from './review-state.ts';

/** A short turn on one part of a tune or on the whole, or a rest from playing. */
export type Turn = PlayedTurn | { readonly kind: 'rest'; readonly seconds: number };

export interface PlayedTurn {
  readonly kind: 'play';
  readonly tune: string;
  /** Index into the tune's parts; null for the whole tune, once through. */
  readonly part: number | null;
  readonly seconds: number;
}

/** What to play on one day. */
export interface Session {
  /** Tunes to play and then tick, the most overdue first. */
  readonly tunes: readonly string[];
  readonly turns: readonly Turn[];
  /** Tunes that are due too, but for which the minutes do not reach. */
  readonly waiting: readonly string[];
}

/** A turn is three times through a part at the slow tempo, but no shorter or longer than this. */
const timesInTurn = 3;
const shortest = 60;
const longest = 180;

/** Five minutes off in every half hour: British Association for Performing Arts Medicine. */
const playBeforeRest = 25 * 60;
const restLength = 5 * 60;

/**
 * Plans a day's playing: the tunes that are due, in turns of one part each that go round the tunes,
 * so that no tune is played for long at a stretch, and at last each tune whole.
 *
 * Due are tunes whose day has come; those whose wait has run over by most, for its length, go first.
 * As many are taken as have room, with all their parts, in the minutes given; one is always taken,
 * with as many parts as there is room for. The part that a tune begins with changes from day to day,
 * since starts are what memory keeps best. Rests count into the minutes, and so do the tunes that are
 * ticked already that day, so that a session comes to an end.
 */
export function planSession(
  tunes: readonly ReviewTune[],
  state: ReviewState,
  today: Day,
  minutes: number,
): Session {
  const needs = (tune: ReviewTune): number =>
    turnsOf(tune, today).reduce((sum, turn) => sum + turn.seconds, 0);
  const done = tunes.filter(tune => isDone(tune, state, today));
  const room = roomFor(minutes * 60) - done.reduce((sum, tune) => sum + needs(tune), 0);
  const due = dueTunes(tunes, state, today);
  const taken: ReviewTune[] = [];
  let used = 0;
  for (const tune of due) {
    const first = taken.length === 0 && done.length === 0;
    if (!first && used + needs(tune) > room) continue;
    taken.push(tune);
    used += needs(tune);
  }
  const chosen = new Set(taken);
  return {
    tunes: taken.map(tune => tune.id),
    turns: withRests(fitting(goRound(taken.map(tune => turnsOf(tune, today))), room)),
    waiting: due.filter(tune => !chosen.has(tune)).map(tune => tune.id),
  };
}

/** Ticked on that day. */
export const isDone = ({ id }: ReviewTune, state: ReviewState, today: Day): boolean =>
  Object.hasOwn(state, id) && state[id]?.last === today;

/** Tunes whose day has come, the most overdue for its interval first, then in the order given. */
export function dueTunes(
  tunes: readonly ReviewTune[],
  state: ReviewState,
  today: Day,
): readonly ReviewTune[] {
  const late = (tune: ReviewTune): number => {
    const at = stateOf(tune, state, today);
    return at === null ? -1 : (today - dueDay(at)) / intervalOf(at.step);
  };
  return tunes
    .map(tune => ({ tune, late: late(tune) }))
    .filter(entry => entry.late >= 0)
    .sort((a, b) => b.late - a.late)
    .map(entry => entry.tune);
}

/** A turn a part, beginning with another part each day; then the whole, each part twice. */
function turnsOf({ id, parts }: ReviewTune, today: Day): readonly PlayedTurn[] {
  const whole = parts.reduce((sum, part) => sum + 2 * part.seconds, 0);
  const turns = parts.map((_, i): PlayedTurn => {
    const part = (i + today) % parts.length;
    const seconds = Math.min(Math.max(timesInTurn * at(parts, part).seconds, shortest), longest);
    return { kind: 'play', tune: id, part, seconds: halfMinutes(seconds) };
  });
  const once = halfMinutes(Math.max(whole, shortest));
  return [
    ...(parts.length > 1 ? turns : []),
    { kind: 'play', tune: id, part: null, seconds: once },
  ];
}

/** Rounded up, so that a turn has room. */
const halfMinutes = (seconds: number): number => Math.ceil(seconds / 30) * 30;

/** The first turn of each, then the second of each that has one, and so on. */
function goRound(turns: readonly (readonly PlayedTurn[])[]): readonly PlayedTurn[] {
  const most = Math.max(0, ...turns.map(own => own.length));
  return Array.from({ length: most }, (_, i) => turns.flatMap(own => own[i] ?? [])).flat();
}

/** Turns while there is room; the first in any case. */
function fitting(turns: readonly PlayedTurn[], room: number): readonly PlayedTurn[] {
  let used = 0;
  return turns.filter((turn, i) => {
    if (i > 0 && used + turn.seconds > room) return false;
    used += turn.seconds;
    return true;
  });
}

/** Seconds for playing in so many altogether: of every half hour, 25 minutes. */
function roomFor(seconds: number): number {
  const halfHour = playBeforeRest + restLength;
  const rest = seconds % halfHour;
  return Math.floor(seconds / halfHour) * playBeforeRest + Math.min(rest, playBeforeRest);
}

/** A rest before any turn that would make more than 25 minutes of playing without one. */
function withRests(turns: readonly PlayedTurn[]): readonly Turn[] {
  let played = 0;
  return turns.flatMap<Turn>(turn => {
    const rests = played > 0 && played + turn.seconds > playBeforeRest;
    played = rests ? turn.seconds : played + turn.seconds;
    return rests ? [{ kind: 'rest', seconds: restLength }, turn] : [turn];
  });
}
