import { type Climb, climbedTo } from '../../../shared/sound/climb.ts';
import { liltAt, liltRange } from '../../../shared/sound/lilt.ts';
import { type PassageChoice, passagesOf } from '../../../shared/sound/passage.ts';
import type { PlayTempo } from '../../../shared/sound/play-time.ts';
import { countIn, soundPassage } from '../../../shared/sound/sound-passage.ts';
import { type Study, studyTune } from '../../../shared/study.ts';
import type { TuneData } from '../../../shared/tune-data.ts';
import type { Round } from './play-rounds.ts';

export interface TuneToPlay {
  readonly study: Study;
}

/** Everything that a student can set. */
export interface Ways {
  readonly choice: PassageChoice;
  /** Which time through, from 1, where a passage comes more than once. */
  readonly pass: number;
  readonly tempo: PlayTempo;
  readonly climb: Climb | null;
  /** A setting of the tune's lilt range. */
  readonly lilt: number;
  readonly easesDots: boolean;
  readonly breath: number;
  readonly answer: boolean;
  readonly pulse: boolean;
  readonly countIn: boolean;
  readonly loop: boolean;
}

const studied = new Map<string, TuneToPlay>();

/** A tune studied as the build studies it, once a page. */
export function tuneToPlay(data: TuneData): TuneToPlay {
  const known = studied.get(data.id) ?? { study: studyTune(data.tune, data.request) };
  studied.set(data.id, known);
  return known;
}

/** The rounds of a passage as it is to be practised; a count-in is round 0 where there is one. */
export function roundsOf(
  { study }: TuneToPlay,
  ways: Ways,
): (round: number) => (Round & { readonly perMinute: number }) | null {
  const passages = passagesOf(study, ways.choice);
  const passage = passages[Math.min(ways.pass, passages.length) - 1];
  if (!passage) throw new Error('the passage is not in the tune');
  const range = liltRange(study.tune);
  const lilt = liltAt(range, ways.lilt, ways.easesDots);
  const before = ways.countIn ? 1 : 0;
  const made = new Map<number, Round & { readonly perMinute: number }>();

  const make = (round: number): Round & { readonly perMinute: number } => {
    const nth = Math.max(0, round - before);
    const perMinute = climbedTo(ways.tempo.perMinute, ways.climb, nth);
    const tempo = { ...ways.tempo, perMinute };
    if (round < before)
      return { sounding: countIn(study, passage, tempo), forEver: false, perMinute };
    const sounding = soundPassage(study, passage, {
      tempo,
      lilt,
      breath: ways.breath,
      answer: ways.answer,
      pulse: ways.pulse,
    });
    const isTop = ways.climb === null || perMinute >= ways.climb.to;
    return { sounding, forEver: ways.loop && isTop, perMinute };
  };

  return round => {
    if (!ways.loop && round > before) return null;
    // Rounds at one tempo are one round: it is made once.
    const key = round < before ? -1 : climbedTo(ways.tempo.perMinute, ways.climb, round - before);
    const known = made.get(key) ?? make(round);
    made.set(key, known);
    return known;
  };
}
