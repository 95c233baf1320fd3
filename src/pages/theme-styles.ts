import { contrastOf } from '../../shared/contrast.ts';
import type { Theme } from '../read/book.ts';

/** Least contrast of text: WCAG 2.2, success criterion 1.4.3. */
const legible = 4.5;

/**
 * Writes the book's colours as values of the style tokens, for light pages. Dark pages keep the default
 * colours, since a light paper does not determine a dark one. The three colours given have enough contrast
 * with each other; each tint between them is as strong as that contrast allows.
 */
export function themeStyles(theme: Theme | null): string {
  if (theme === null || (theme.ink ?? theme.paper ?? theme.accent) === null) return '';
  const { ink, paper, accent } = {
    ink: '#22262b',
    paper: '#f6f3ec',
    accent: '#1f5a50',
    ...given(theme),
  };
  const legibleOn = (ground: string): boolean =>
    [ink, accent].every(colour => contrastOf(colour, ground) >= legible);
  const sheet = strongest(paper, '#ffffff', 0.7, legibleOn);
  const tint = strongest(paper, accent, 0.12, legibleOn);
  const soft = strongest(ink, paper, 0.3, c =>
    [paper, sheet].every(g => contrastOf(c, g) >= legible),
  );
  const rosin = [paper, sheet].every(g => contrastOf('#96430f', g) >= legible) ? '#96430f' : accent;
  const warm = strongest(paper, rosin, 0.14, g => legibleOn(g) && contrastOf(rosin, g) >= legible);
  const values = {
    paper,
    sheet,
    ink,
    soft,
    rule: mix(paper, ink, 0.28),
    spruce: accent,
    rosin,
    tint,
    warm,
  };
  const lines = Object.entries(values).map(([name, colour]) => `    --${name}: ${colour};`);
  return `@media (prefers-color-scheme: light) and (forced-colors: none) {\n  :root {\n${lines.join('\n')}\n  }\n}\n`;
}

const given = (theme: Theme): Partial<Record<'ink' | 'paper' | 'accent', string>> => ({
  ...(theme.ink === null ? {} : { ink: theme.ink }),
  ...(theme.paper === null ? {} : { paper: theme.paper }),
  ...(theme.accent === null ? {} : { accent: theme.accent }),
});

/** From `base` as far towards `other` as `most` and the condition allow, in steps of a hundredth. */
function strongest(
  base: string,
  other: string,
  most: number,
  holds: (colour: string) => boolean,
): string {
  for (let share = most; share > 0; share -= 0.01) {
    const colour = mix(base, other, share);
    if (holds(colour)) return colour;
  }
  return base;
}

/** `share` of `other` in `base`, by channels of sRGB. */
function mix(base: string, other: string, share: number): string {
  const channel = (colour: string, at: number): number =>
    Number.parseInt(colour.slice(at, at + 2), 16);
  const mixed = [1, 3, 5].map(at => {
    const value = channel(base, at) * (1 - share) + channel(other, at) * share;
    return Math.round(value).toString(16).padStart(2, '0');
  });
  return `#${mixed.join('')}`;
}
