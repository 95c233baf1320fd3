import type { LeadIn } from '../bowing/bowing.ts';
import { strokesOf } from '../bowing/lead-in-form.ts';
import { leadInForm, type SlurFault, slurFault } from '../bowing/lead-in-of.ts';
import { writtenSlurs } from '../bowing/written-slurs.ts';
import type { StudyRequest } from '../study.ts';
import { aimOf, contextOf, stretchOf } from './stretch-of.ts';
import type { Outcome } from './trial.ts';

/** One thing about a bowing that no plan for its level would do. Events are of written notes. */
export type PastLimit =
  | { readonly kind: 'many-notes'; readonly events: readonly number[]; readonly most: number }
  | { readonly kind: 'long-stroke'; readonly events: readonly number[] }
  | { readonly kind: 'slur-over'; readonly events: readonly number[]; readonly fault: SlurFault };

/** Where a lead-in as it is bowed goes past what its level and preset allow, in order. */
export function pastLimits(
  { study, anchor }: Outcome,
  request: StudyRequest,
  leadIn: LeadIn,
): readonly PastLimit[] {
  const context = contextOf(study, request);
  const { from, end } = stretchOf(study.performance, leadIn);
  const aim = aimOf(study.tune, request, anchor, leadIn);
  const form = leadInForm(context, from, end, writtenSlurs(study.tune).joined, aim);
  return strokesOf(form.written).flatMap(([first, last]): PastLimit[] => {
    const notes = study.performance.notes.slice(from + first, from + last + 1);
    const events = notes.map(n => n.event);
    if (events.length < 2) return [];
    const time = form.lengths.slice(first, last + 1).reduce((sum, t) => sum + t, 0);
    const met = notes.slice(1).flatMap((note, i): PastLimit[] => {
      const before = events[i] ?? -1;
      const fault = slurFault(context, aim.preset, before, note);
      return fault ? [{ kind: 'slur-over', events: [before, note.event], fault }] : [];
    });
    return [
      ...(events.length > form.longestSlur
        ? [{ kind: 'many-notes' as const, events, most: form.longestSlur }]
        : []),
      ...(time > form.longestStroke ? [{ kind: 'long-stroke' as const, events }] : []),
      ...met,
    ];
  });
}
