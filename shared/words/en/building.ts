import type { Problem } from '../../problem.ts';

/** Messages about what a build leaves out. */
export const buildingMessages: Readonly<
  Record<string, (p: Problem) => { message: string; mend: string }>
> = {
  'rights-unknown': p => ({
    message: `It is not said who owns the tune \`${p.facts.tune ?? ''}\`, so its notation and sound are withheld from the published site.`,
    mend: 'Write `rights: traditional`, `rights: own` or `permission: "…"` at the head of its page, or on its `:::tune`.',
  }),
};
