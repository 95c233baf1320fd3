import type { Problem } from '../../problem.ts';
import type { Messages } from '../problem-words.ts';

/** What the machine answers, by its code (POSIX, `errno.h`). */
const reasons: Readonly<Record<string, string>> = {
  ENOSPC: 'no room is left on the disk',
  EDQUOT: 'your share of the disk is used up',
  EACCES: 'you may not write or read there',
  EPERM: 'you may not write or read there',
  EROFS: 'the disk can only be read',
  ENOENT: 'it is not there',
  ENOTDIR: 'a file stands where a folder should be',
  EBUSY: 'another program holds it open',
  EIO: 'the disk does not answer',
};

const reason = ({ facts }: Problem<'site-unwritable' | 'source-gone'>): string => {
  const code = facts.reason;
  return reasons[code] ? `${reasons[code]}, ${code}` : code;
};

/** Messages about what a build leaves out. */
export const buildingMessages = {
  'site-unwritable': p => ({
    message: `The folder "${p.actual}" could not be written (${reason(p)}); the site in it is as it was, or is completed by the next build.`,
    mend: 'Make room on the disk, or see that you may write in that folder, and build again.',
  }),
  'unfinished-needed': p => ({
    message: `This holds only while unfinished pages are shown: in the book that you publish it breaks the rule \`${p.facts.rule}\`.`,
    mend: 'Take `unfinished: true` out of the page that is needed, or leave this out until then.',
  }),
  'source-gone': p => ({
    message: `The file "${p.actual}" went away or could not be read while the book was built (${reason(p)}).`,
    mend: 'Put it back, or take out what refers to it, and build again.',
  }),
  'drawing-failed': p => ({
    message: `The tune "${p.facts.tune}" could not be drawn (${p.actual}), so its notation is left out.`,
    mend: 'Take signs out of the tune, one after another, until it draws, and tell the maintainers which it was.',
  }),
  'rights-unknown': p => ({
    message: `It is not said who owns the tune \`${p.facts.tune}\`, so its notation and sound are withheld from the published site.`,
    mend: 'Write `rights: traditional`, `rights: own` or `permission: "…"` at the head of its page, or on its `:::tune`.',
  }),
} satisfies Partial<Messages>;
