import type { BowingInput } from '../bowing/bowing-input.ts';
import { strokesOf } from '../bowing/lead-in-model.ts';
import { bowingContext } from '../bowing/lead-in-of.ts';
import { mendRegion } from '../bowing/mend-region.ts';
import { editedScore, liftBefore } from '../bowing/mends.ts';
import { editsBetween } from '../bowing/slur-edits.ts';
import { strokeTerms } from '../bowing/stroke-terms.ts';
import { anchorFault, troublesOf } from '../bowing/troubles.ts';
import type { ArriveDrill } from './drill.ts';
import type { DrillSource } from './drill-source.ts';
import { layBowing, layWithEdit, missedAt } from './lay-bowing.ts';

/** A student's bowing of the notes shown. */
export interface TriedBowing {
  /** For each of the drill's notes: slurred to the one before it. */
  readonly joined: readonly boolean[];
  /** Events before which the bow is lifted. */
  readonly lifts: readonly number[];
}

/**
 * mends: one change, and it arrives each time through, with nothing else harmed.
 * misses: it still comes the wrong way, some time through. harms: it arrives, and turns the bow
 * round somewhere else. beyond: it would do, but the slur is more than the level plays, or joins what
 * a slur cannot. several: more than one change. nothing: none yet.
 */
export type MendVerdict = 'mends' | 'misses' | 'harms' | 'beyond' | 'several' | 'nothing';

/** Judges a student's bowing by laying the strokes of the whole tune, every time through. */
export function judgeMend(
  source: DrillSource,
  drill: ArriveDrill,
  tried: TriedBowing,
): MendVerdict {
  const base = layWithEdit(source, drill.broken);
  const slurs = editsBetween(
    drill.joined.slice(1).map(x => !x),
    tried.joined.slice(1).map(x => !x),
    drill.notes,
  );
  const changes = slurs.length + tried.lifts.length;
  if (changes !== 1) return changes === 0 ? 'nothing' : 'several';
  const score = lifted(withTried(base.score, drill, tried), source, drill, tried);
  const after = layBowing(score, base.passages);
  const stillMissed = missedAt(base, { first: drill.first }).some(note =>
    after.faults.has(anchorFault(note)),
  );
  if (stillMissed) return 'misses';
  const before = troublesOf(base.score, base.laid, base.passages).faults;
  if ([...after.faults].some(f => !before.has(f))) return 'harms';
  return isWithinLimits(source, drill, tried) ? 'mends' : 'beyond';
}

/** The score with the slurs of the notes shown as the student has them. */
const withTried = (score: BowingInput, drill: ArriveDrill, tried: TriedBowing): BowingInput => {
  const joined = [...score.joined];
  drill.notes.forEach((e, i) => {
    if (i > 0) joined[e] = tried.joined[i] === true;
  });
  return { ...score, joined };
};

/** The score with the student's lifts: after each the bow starts again the way it last went. */
function lifted(
  score: BowingInput,
  source: DrillSource,
  drill: ArriveDrill,
  { lifts }: TriedBowing,
): BowingInput {
  return lifts.reduce((s, before) => {
    const { laid } = layBowing(s, source.bowing.anchors);
    const place = [...drill.notes, drill.first].indexOf(before);
    return editedScore(s, liftBefore(s, laid, shownFrom(source, drill) + place));
  }, score);
}

/** Whether every slur that is not part of one in the drill keeps within the level, and joins what may be joined. */
function isWithinLimits(source: DrillSource, drill: ArriveDrill, tried: TriedBowing): boolean {
  const { tune, performance, fingering, map, settings } = source;
  const context = bowingContext(tune, performance, fingering, map, settings);
  const { score, laid } = layWithEdit(source, drill.broken);
  const from = shownFrom(source, drill);
  const end = from + drill.notes.length;
  const { lastFrom } = strokeTerms(mendRegion(context, score, laid, from, end, drill.level).form);
  const runs = (joined: readonly boolean[]) => strokesOf(joined.slice(1).map(x => !x));
  const known = runs(drill.joined);
  return runs(tried.joined).every(
    ([first, last]) =>
      known.some(([from, to]) => from <= first && last <= to) || last <= lastFrom(first),
  );
}

/** Sounded note with which the notes shown begin: they end at the anchor in the pass shown. */
function shownFrom({ performance }: DrillSource, { notes, first, pass }: ArriveDrill): number {
  const end = performance.notes.findIndex(n => n.event === first && n.pass === pass);
  if (end < notes.length) throw new Error('the drill is of another tune');
  return end - notes.length;
}
