import type { LinkFault } from '../../trying/trial-link.ts';

/** What a link to somebody's slurs says where it cannot be followed. */
export const linkFaults: Readonly<Record<LinkFault | 'no-passage', string>> = {
  broken: 'The link is not whole, so the slurs stand as the teacher wrote them.',
  'later-version':
    'The link was made by a later copy of this book, so the slurs stand as the teacher wrote them.',
  'other-notes':
    'The link was made for other notes than stand here now, so the slurs stand as the teacher wrote them.',
  'no-passage': 'The link names a passage that is not on this page.',
};

/** What stands in the place to try strokes until it is there. */
export const tryWaits = {
  wait: 'Fetching the notes …',
  failed: 'The notes could not be fetched. Close this and open it again to have another try.',
} as const;
