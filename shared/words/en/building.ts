import type { Problem } from '../../problem.ts';

/** Messages about what a build leaves out. */
export const buildingMessages: Readonly<
  Record<string, (p: Problem) => { message: string; mend: string }>
> = {
  'site-unwritable': p => ({
    message: `The folder "${p.actual}" could not be written (${p.facts.reason}); the site in it is as it was, or is completed by the next build.`,
    mend: 'Make room on the disk, or see that you may write in that folder, and build again.',
  }),
  'source-gone': p => ({
    message: `The file "${p.actual}" went away or could not be read while the book was built (${p.facts.reason}).`,
    mend: 'Put it back, or take out what refers to it, and build again.',
  }),
  'drawing-failed': p => ({
    message: `The tune "${p.facts.tune}" could not be drawn (${p.actual}), so its notation is left out.`,
    mend: 'Take signs out of the tune, one after another, until it draws, and tell the maintainers which it was.',
  }),
  'rights-unknown': p => ({
    message: `It is not said who owns the tune \`${p.facts.tune ?? ''}\`, so its notation and sound are withheld from the published site.`,
    mend: 'Write `rights: traditional`, `rights: own` or `permission: "…"` at the head of its page, or on its `:::tune`.',
  }),
};
