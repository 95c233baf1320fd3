import { noteAt } from '../music/note-at.ts';
import type { Bowing, Trial } from './trial.ts';

/**
 * A bowing as the fragment of an address, so that it can be sent to somebody with the same book:
 *
 * ```
 * try=1.fish-hill-first-try.k3f0x2.IAAI
 *     |  anchor              notes  slurs
 *     version
 * ```
 *
 * `slurs` holds one bit per junction, six to a character, the first junction in the highest bit.
 * `notes` is a hash of the lead-in's notes: where the tune has changed since, the hashes differ and the
 * link is refused, so that slurs never go onto the wrong notes.
 */
const version = '1';
const digits = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

/** Writes the fragment, without `#`. */
export const trialLink = (trial: Trial, bowing: Bowing): string =>
  `try=${[version, trial.anchorId, sumOfNotes(trial), packed(bowing)].join('.')}`;

/** The parts of a link, before its tune is loaded. */
export interface LinkedTrial {
  readonly anchorId: string;
  readonly sum: string;
  readonly slurs: string;
}

/** Why a link is refused: malformed, of a later version of Bowbook, or made for other notes. */
export type LinkFault = 'broken' | 'later-version' | 'other-notes';

/** Parses a fragment without its `#`; null where it is no link to a bowing. */
export function readTrialLink(hash: string): LinkedTrial | LinkFault | null {
  if (!hash.startsWith('try=')) return null;
  const [found, ...rest] = decoded(hash.slice('try='.length)).split('.');
  if (/^\d{1,6}$/.test(found ?? '') && Number(found) > Number(version)) return 'later-version';
  const [anchorId, sum, slurs] = rest;
  if (found !== version || rest.length !== 3 || !anchorId || !sum || !slurs) return 'broken';
  if (!/^[\p{L}\p{N}_-]+$/u.test(anchorId) || !/^[0-9a-z]{1,7}$/.test(sum)) return 'broken';
  return /^[\w-]+$/.test(slurs) ? { anchorId, sum, slurs } : 'broken';
}

/** Decodes the percent-encoded letters of an anchor's name; empty text where `%` is malformed. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}

/** The bowing of a link, or why it cannot be used with this trial. */
export function bowingOfLink(trial: Trial, link: LinkedTrial): Bowing | LinkFault {
  if (link.anchorId !== trial.anchorId || link.sum !== sumOfNotes(trial)) return 'other-notes';
  const bits = [...link.slurs].flatMap(digit => {
    const value = digits.indexOf(digit);
    return [5, 4, 3, 2, 1, 0].map(bit => ((value >> bit) & 1) === 1);
  });
  const bowing = bits.slice(0, trial.junctions.length);
  return link.slurs === packed(bowing) && bowing.length === trial.junctions.length
    ? bowing
    : 'broken';
}

function packed(bowing: Bowing): string {
  let out = '';
  for (let i = 0; i < bowing.length; i += 6) {
    let value = 0;
    for (let bit = 0; bit < 6; bit++) value = value * 2 + (bowing[i + bit] ? 1 : 0);
    out += digits[value];
  }
  return out;
}

/** FNV-1a over the notes that the junctions stand before: their names, pitches and lengths. */
function sumOfNotes({ tune, junctions }: Trial): string {
  const text = junctions.map(e => {
    const note = noteAt(tune, e);
    return `${note.id} ${note.pitches.map(p => p.midi).join(' ')} ${note.duration.n}/${note.duration.d}`;
  });
  let hash = 2166136261;
  for (const c of text.join('\n')) hash = Math.imul(hash ^ (c.codePointAt(0) ?? 0), 16777619) >>> 0;
  return hash.toString(36);
}
