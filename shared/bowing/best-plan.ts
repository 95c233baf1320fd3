import type { LeadIn, Plan } from './bowing.ts';

/**
 * The plan that is drawn: the best of the first lead-in that has one. Passes that come to a passage
 * by different ways, or in different directions, have a lead-in each, in the order they are played.
 */
export function bestPlan(
  leadIns: readonly LeadIn[],
): { readonly leadIn: LeadIn; readonly plan: Plan } | null {
  const leadIn = leadIns.find(l => l.plans.length > 0);
  const plan = leadIn?.plans[0];
  return leadIn && plan ? { leadIn, plan } : null;
}
