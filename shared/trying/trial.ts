import { withJoins } from '../bowing/apply-edit.ts';
import type { Anchor, LeadIn, Plan, PlanRequest } from '../bowing/bowing.ts';
import { type WrittenSlurs, writtenSlurs } from '../bowing/written-slurs.ts';
import type { Tune } from '../music/tune.ts';
import { got } from '../must.ts';
import { type Study, type StudyRequest, studyTune } from '../study.ts';
import { alikeJunctions } from './alike-junctions.ts';

/**
 * A tune in which a student may change the slurs of the lead-ins to one anchor.
 *
 * The student's slurs are written into a copy of the tune, and the copy is studied by the same engine
 * as in the build. So the outcome is the one that the book would state if its teacher had written
 * those slurs.
 */
export interface Trial {
  /** The tune as the teacher wrote it. */
  readonly tune: Tune;
  /** The tune's request, with the trial's level and preset for the anchor. */
  readonly request: StudyRequest;
  readonly anchorId: string;
  readonly slurs: WrittenSlurs;
  /** Events that may share the stroke of the note written before them, in written order. */
  readonly junctions: readonly number[];
  /** For each junction, by its event: those at the same place of identical phrases, itself included. */
  readonly alike: ReadonlyMap<number, readonly number[]>;
  readonly written: Outcome;
}

/** Whether each of a trial's `junctions` is slurred, in their order. */
export type Bowing = readonly boolean[];

/** The study of a tune with a bowing's slurs. */
export interface Outcome {
  readonly bowing: Bowing;
  readonly study: Study;
  readonly anchor: Anchor;
}

/**
 * Opens a trial. Returns null where the tune has no such anchor, or no junction leads to it. Costs one
 * study of the tune.
 */
export function openTrial(
  tune: Tune,
  asked: StudyRequest,
  anchorId: string,
  { level, preset }: PlanRequest,
): Trial | null {
  const request = {
    ...asked,
    anchors: asked.anchors.map(a => (a.id === anchorId ? { ...a, level, preset, asked: [] } : a)),
  };
  const study = studyTune(tune, request);
  const anchor = study.bowing.anchors.find(a => a.id === anchorId);
  if (!anchor) return null;
  const slurs = writtenSlurs(tune);
  const junctions = junctionsOf(anchor.leadIns);
  if (junctions.length === 0) return null;
  const bowing = junctions.map(e => slurs.joined[e] === true);
  return {
    tune,
    request,
    anchorId,
    slurs,
    junctions,
    alike: alikeJunctions(study, request, anchor, junctions),
    written: { bowing, study, anchor },
  };
}

/**
 * The junctions of all lead-ins. A lead-in holds no repeat sign and no ending: its notes are
 * neighbours as played and as written, so that a slur can be written over any of them.
 */
const junctionsOf = (leadIns: readonly LeadIn[]): number[] =>
  [...new Set(leadIns.flatMap(l => l.notes.slice(1)))].sort((a, b) => a - b);

/** The tune with a bowing's slurs written in it, and nothing else changed. */
export function tuneWith({ tune, slurs, junctions }: Trial, bowing: Bowing): Tune {
  const joined = [...slurs.joined];
  junctions.forEach((e, i) => {
    joined[e] = bowing[i] === true;
  });
  return withJoins(tune, slurs, joined);
}

/** Studies the tune with a bowing's slurs. Costs one study. */
export function playBowing(trial: Trial, bowing: Bowing): Outcome {
  const study = studyTune(tuneWith(trial, bowing), trial.request);
  const anchor = study.bowing.anchors.find(a => a.id === trial.anchorId);
  if (!anchor) throw new Error(`the anchor ${trial.anchorId} was lost`);
  return { bowing, study, anchor };
}

/**
 * The bowing with one junction (an event index) changed from separate to slurred or back. `together`:
 * the junctions at the same place of identical phrases too.
 */
export function turnJunction(
  trial: Trial,
  bowing: Bowing,
  event: number,
  together: boolean,
): Bowing {
  const to = !bowing[trial.junctions.indexOf(event)];
  const places = together ? got(trial.alike.get(event), `junction at event ${event}`) : [event];
  return trial.junctions.map((e, i) => (places.includes(e) ? to : bowing[i] === true));
}

/** A plan of the trial's anchor as a bowing; junctions outside its lead-in stay as written. */
export function bowingOfPlan({ junctions, written }: Trial, leadIn: LeadIn, plan: Plan): Bowing {
  const slurred = new Set(plan.slurs.flatMap(group => group.slice(1)));
  return junctions.map((e, i) =>
    leadIn.notes.includes(e) ? slurred.has(e) : written.bowing[i] === true,
  );
}

/** The lead-in of one pass of the anchor (from 1); null where that pass has none. */
export const leadInOfPass = ({ anchor }: Outcome, pass: number): LeadIn | null =>
  anchor.leadIns.find(l => l.passes.includes(pass)) ?? null;

/** Whether two bowings of one trial are equal. */
export const sameBowing = (a: Bowing, b: Bowing): boolean => a.every((x, i) => x === b[i]);
