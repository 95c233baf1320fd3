import { at } from '../must.ts';
import type { Demand, Edit, SlurGroup } from './bowing.ts';
import { type BowingInput, bowingInput } from './bowing-input.ts';
import type { SetPassage } from './find-lead-ins.ts';
import { strokeGroups } from './lay-strokes.ts';
import { type LaidCell, type LaidWay, layWay } from './lay-way.ts';
import { type BowingContext, presetKey, presetOf } from './lead-in-of.ts';
import type { BowingSettings, Level } from './settings.ts';
import { editsBetween } from './slur-edits.ts';
import { wayFor } from './way-model.ts';

/** A bowing of a whole tune, in a way of bowing. Notes are event indices. */
export interface Proposal {
  /** Key of the preset. */
  readonly way: string;
  /** Name of the way on pages. */
  readonly name: string;
  /** All slurs, those of hooked pairs and anchors included. */
  readonly slurs: readonly SlurGroup[];
  /** Hooked pairs: two notes in one stroke, separated. */
  readonly hooks: readonly SlurGroup[];
  /** Notes before which the bow lifts, since no bowing meets their demand together with the others. */
  readonly lifts: readonly { readonly note: number; readonly demand: Demand }[];
  /** Number of strokes in the tune as played. */
  readonly strokes: number;
  /** Where the bowing differs from the way. */
  readonly bends: readonly Bend[];
  /** Whether like phrases are bowed alike; false where there are too many to try. */
  readonly alike: boolean;
}

/** A difference from the way, and the demand that causes it; null where none does. */
export interface Bend {
  readonly edit: Edit;
  readonly demand: Demand | null;
}

/** What a proposal must meet. */
export interface ProposalRequest {
  /** `start=` of the tune: its first stroke; null where it is not stated. */
  readonly start: BowingInput['start'];
  readonly anchors: readonly SetPassage[];
  /** Key of the first way; null for that of the tune's type. */
  readonly preset: string | null;
  readonly level: Level;
}

/** Most proposals. */
const most = 3;

/**
 * Proposes at most three bowings of a whole tune, regardless of its present slurs except those of anchors: first
 * in the way requested, or that of its type; then in the other ways of the type; last in single strokes. A
 * bowing equal to an earlier one is left out. Empty where ties make cells overlap (`tuneCells`). Time is linear
 * in the notes of a tune whose parts have ordinary length.
 */
export function proposeBowings(context: BowingContext, request: ProposalRequest): Proposal[] {
  const { settings, tune, performance } = context;
  const anchored = new Map(request.anchors.map(a => [a.first, a.direction]));
  const { start } = request;
  const written = bowingInput(tune, performance, { start, restart: settings.restart, anchored });
  const kept = (e: number): boolean =>
    request.anchors.some(a => a.first < e && e <= a.last) && at(written.joined, e);
  const score = { ...written, joined: tune.events.map((_, e) => kept(e)) };
  const proposals: Proposal[] = [];
  const seen = new Set<string>();
  for (const way of waysOf(settings, context, request.preset)) {
    const preset = presetOf(settings, tune, way);
    const laid = layWay(context, score, request.anchors, wayFor(context, preset, request.level));
    if (!laid) continue;
    const proposal = { way, name: preset.name, ...proposed(score, laid) };
    const key = JSON.stringify([proposal.slurs, proposal.hooks]);
    if (!seen.has(key) && proposals.length < most) proposals.push(proposal);
    seen.add(key);
  }
  return proposals;
}

/** Key of a second way of bowing, by type of tune (common practice). */
const alsoIn: Readonly<Record<string, string>> = {
  reel: 'slurs-into-the-beat',
  jig: 'slur-two-one-separate',
  'slip jig': 'slur-two-one-separate',
  hornpipe: 'short-into-long',
  strathspey: 'hooked-pairs',
};

function waysOf(
  { presetFor, presets }: BowingSettings,
  { tune }: BowingContext,
  asked: string | null,
): string[] {
  const own = presetKey({ presetFor }, tune, null) ?? 'as-printed-1883';
  const other = alsoIn[tune.type ?? ''];
  const all = [
    ...(asked === null ? [] : [asked]),
    own,
    ...(other ? [other] : []),
    'single-strokes',
  ];
  return [...new Set(all)].filter(way => Object.hasOwn(presets, way));
}

function proposed(
  score: BowingInput,
  { cells, lifts, alike }: LaidWay,
): Omit<Proposal, 'way' | 'name'> {
  const joined = [...score.joined];
  for (const { cell, bowing } of cells) {
    bowing.forEach((changes, j) => {
      joined[at(cell.events, j + 1)] = !changes;
    });
  }
  const { notes } = score.performance;
  const strokes = score.restarts.flatMap((from, stretch) =>
    strokeGroups({ ...score, joined }, from, score.restarts[stretch + 1] ?? notes.length),
  );
  const slurs = new Map<string, SlurGroup>();
  for (const stroke of strokes) {
    const events = stroke.map(k => at(notes, k).event);
    if (events.length > 1) slurs.set(events.join(), events);
  }
  return {
    slurs: [...slurs.values()].toSorted((a, b) => at(a, 0) - at(b, 0)),
    hooks: cells.flatMap(hooksOf),
    lifts: lifts.map(({ event, demand }) => ({ note: event, demand })),
    strokes: strokes.length,
    bends: cells.flatMap(c =>
      editsBetween(c.free, c.bowing, c.cell.events).map(edit => ({ edit, demand: c.decidedBy })),
    ),
    alike,
  };
}

const hooksOf = ({ cell, model, bowing }: LaidCell): SlurGroup[] =>
  bowing.flatMap((changes, j) => (!changes && model.hooks[j] ? [cell.events.slice(j, j + 2)] : []));
