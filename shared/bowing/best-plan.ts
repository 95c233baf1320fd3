import type { LeadIn, Plan } from './bowing.ts';

/**
 * Returns the plan to draw: the best of the first lead-in that has one. Passes that reach a passage over
 * different notes, or starting on different strokes, have separate lead-ins, in playing order.
 */
export function bestPlan(
  leadIns: readonly LeadIn[],
): { readonly leadIn: LeadIn; readonly plan: Plan } | null {
  const leadIn = leadIns.find(l => l.plans.length > 0);
  const plan = leadIn?.plans[0];
  return leadIn && plan ? { leadIn, plan } : null;
}
