/** How a tune is first shown: by ear, its notation hidden until it is asked for, or in notation. */
export const shownBy = ['ear', 'notation'] as const;
/** One of `shownBy`. */
export type ShownBy = (typeof shownBy)[number];
