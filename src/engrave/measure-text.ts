import type { MeasureText } from './drawing-surface.ts';

/**
 * Widths of Andika Regular, the font that the site ships for plain text, from the space to `~`, in
 * thousandths of the size. `tests/engrave/measure-text.test.ts` holds them to the font's own file.
 */
const widths = [
  269, 373, 500, 586, 586, 745, 597, 295, 388, 388, 502, 586, 317, 420, 313, 488, 586, 586, 586,
  586, 586, 586, 586, 586, 586, 586, 313, 317, 586, 586, 586, 513, 831, 681, 627, 662, 701, 566,
  562, 693, 720, 476, 471, 640, 527, 876, 732, 713, 583, 720, 637, 574, 618, 703, 667, 1016, 647,
  645, 601, 386, 488, 386, 415, 622, 283, 562, 564, 498, 581, 535, 366, 549, 574, 276, 291, 505,
  276, 823, 579, 557, 571, 552, 435, 471, 408, 579, 522, 757, 530, 518, 508, 488, 337, 488, 544,
] as const;

/** Signs that the font lacks come from another: about as wide as a figure. */
const otherWidth = 586;

/** Width and line height of a text as the site's pages show it, without kerning. */
export const measureText: MeasureText = (text, size) => ({
  width: ([...text].reduce((sum, c) => sum + widthOf(c), 0) * size) / 1000,
  height: size * 1.2,
});

const widthOf = (c: string): number => widths[(c.codePointAt(0) ?? 0) - 32] ?? otherWidth;
