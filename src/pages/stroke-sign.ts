import type { Direction } from '../../shared/music/tune.ts';
import type { Words } from '../../shared/words/words-for.ts';
import { type Html, html, render } from './render.ts';

const signs = new Map<Direction, Html>();

/**
 * HTML of the sign of a stroke, hidden from screen readers, for places whose text already names the stroke.
 * Made once for each direction, since a page has one at every note.
 */
export function strokeSign(direction: Direction, words: Words): Html {
  const known = signs.get(direction);
  if (known) return known;
  const sign = html(render('parts/sign', { direction, alt: '' }, words));
  signs.set(direction, sign);
  return sign;
}
