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

/** A whole bowing of a tune, in a named way. Notes are event indices. */
export interface Proposal {
  /** Key of the preset. */
  readonly way: string;
  /** What pages call it. */
  readonly name: string;
  /** Notes of one stroke, two or more, hooked ones and an anchor's own among them. */
  readonly slurs: readonly SlurGroup[];
  /** Pairs of notes in one stroke that are parted in it. */
  readonly hooks: readonly SlurGroup[];
  /** Notes before which the bow lifts, since no bowing comes to them on the stroke that is asked for. */
  readonly lifts: readonly { readonly note: number; readonly demand: Demand }[];
  /** Strokes of the whole tune as played. */
  readonly strokes: number;
  /** Where the way is bent, and what for; null where nothing asked for it. */
  readonly bends: readonly Bend[];
  /** Like phrases are bowed alike; false where there were too many to try. */
  readonly alike: boolean;
}

export interface Bend {
  readonly edit: Edit;
  readonly demand: Demand | null;
}

export interface ProposalRequest {
  /** `start=` of the tune. */
  readonly start: BowingInput['start'];
  readonly anchors: readonly SetPassage[];
  /** The way to begin with; null for that of the tune's type. */
  readonly preset: string | null;
  readonly level: Level;
}

/** Proposals at most. */
const most = 3;

/**
 * Whole bowings of a tune, three at most, whatever slurs it has now: first in the way asked for, or that of
 * its type; then in the other ways of the type; last in single strokes. The slurs of anchors stay. A way
 * that comes to the bowing of one before it is left out. Empty where passes tie notes so unlike that no
 * stretch is played whole. Linear in the notes of a tune with parts of ordinary length.
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

/** A way that a type is bowed in besides its own, by the name that it comes with (common practice). */
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
