import type { LeadIn } from '../bowing/bowing.ts';
import { strokesOf } from '../bowing/lead-in-model.ts';
import { leadInModel, type SlurFault, slurFault } from '../bowing/lead-in-of.ts';
import { writtenSlurs } from '../bowing/written-slurs.ts';
import { at } from '../must.ts';
import type { StudyRequest } from '../study.ts';
import { aimOf, contextOf, stretchOf } from './stretch-of.ts';
import type { Outcome } from './trial.ts';

/** One way in which a bowing exceeds its level or preset. `events` are indices of written notes. */
export type PastLimit =
  | { readonly kind: 'many-notes'; readonly events: readonly number[]; readonly most: number }
  | { readonly kind: 'long-stroke'; readonly events: readonly number[]; readonly seconds: number }
  | { readonly kind: 'slur-over'; readonly events: readonly number[]; readonly fault: SlurFault };

/** The limits of its level and preset that a lead-in as bowed exceeds, in playing order. */
export function pastLimits(
  { study, anchor }: Outcome,
  request: StudyRequest,
  leadIn: LeadIn,
): readonly PastLimit[] {
  const context = contextOf(study, request);
  const { from, end } = stretchOf(study.performance, leadIn);
  const aim = aimOf(study.tune, request, anchor, leadIn);
  const form = leadInModel(context, from, end, writtenSlurs(study.tune).joined, aim);
  const seconds = aim.preset.longestStroke ?? request.bowing.limits[aim.level].longestStroke;
  return strokesOf(form.written).flatMap(([first, last]): PastLimit[] => {
    const notes = study.performance.notes.slice(from + first, from + last + 1);
    const events = notes.map(n => n.event);
    if (events.length < 2) return [];
    const time = form.lengths.slice(first, last + 1).reduce((sum, t) => sum + t, 0);
    const met = notes.slice(1).flatMap((note, i): PastLimit[] => {
      const before = at(events, i);
      const fault = slurFault(context, aim.preset, before, note);
      return fault ? [{ kind: 'slur-over', events: [before, note.event], fault }] : [];
    });
    return [
      ...(events.length > form.longestSlur
        ? [{ kind: 'many-notes' as const, events, most: form.longestSlur }]
        : []),
      ...(time > form.longestStroke ? [{ kind: 'long-stroke' as const, events, seconds }] : []),
      ...met,
    ];
  });
}
