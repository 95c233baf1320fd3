import type { Direction } from '../../shared/music/tune.ts';
import type { Words } from '../../shared/words/words-for.ts';
import { type Html, html, render } from './render.ts';

const signs = new Map<Direction, Html>();

/**
 * The sign of a stroke beside words that say it, for what stands at every note of a page: filled in
 * once for each way of the bow, where a partial would be at each note.
 */
export function strokeSign(direction: Direction, words: Words): Html {
  const known = signs.get(direction);
  if (known) return known;
  const sign = html(render('parts/sign', { direction, alt: '' }, words));
  signs.set(direction, sign);
  return sign;
}
