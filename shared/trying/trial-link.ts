import type { Bowing, Trial } from './trial.ts';

/**
 * A bowing as the last part of an address, so that it can be sent to somebody with the same book:
 *
 * ```
 * try=1.tide-turn-first-try.k3f0x2.IAAIAA
 *     |  anchor              notes  slurs
 *     version
 * ```
 *
 * `slurs` holds a bit a junction, six to a character, the first junction in the highest bit. `notes`
 * is a sum over the notes of the way there: where the book's tune has changed since, the sums differ
 * and the slurs are not laid on the wrong notes.
 */
const version = '1';
const digits = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

export const trialLink = (trial: Trial, bowing: Bowing): string =>
  `try=${[version, trial.anchorId, sumOfNotes(trial), packed(bowing)].join('.')}`;

/** What a link asks for, before its tune is at hand. */
export interface LinkedTrial {
  readonly anchorId: string;
  readonly sum: string;
  readonly slurs: string;
}

/** Why a link cannot be followed: not whole, from a later version, or made for other notes. */
export type LinkFault = 'broken' | 'later-version' | 'other-notes';

/** Reads the last part of an address, without its `#`; null where it is no link to a bowing. */
export function readTrialLink(hash: string): LinkedTrial | LinkFault | null {
  if (!hash.startsWith('try=')) return null;
  const [found, ...rest] = decoded(hash.slice('try='.length)).split('.');
  if (/^\d{1,6}$/.test(found ?? '') && Number(found) > Number(version)) return 'later-version';
  const [anchorId, sum, slurs] = rest;
  if (found !== version || rest.length !== 3 || !anchorId || !sum || !slurs) return 'broken';
  if (!/^[\p{L}\p{N}_-]+$/u.test(anchorId) || !/^[0-9a-z]{1,7}$/.test(sum)) return 'broken';
  return /^[\w-]+$/.test(slurs) ? { anchorId, sum, slurs } : 'broken';
}

/** An anchor's name may have letters that an address writes as codes; a stray % is none. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}

/** The bowing that a link asks of a trial. */
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
    const note = tune.events[e];
    if (note?.kind !== 'note') return '';
    return `${note.id} ${note.pitches.map(p => p.midi).join(' ')} ${note.duration.n}/${note.duration.d}`;
  });
  let hash = 2166136261;
  for (const c of text.join('\n')) hash = Math.imul(hash ^ (c.codePointAt(0) ?? 0), 16777619) >>> 0;
  return hash.toString(36);
}
