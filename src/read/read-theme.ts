import { contrastOf } from '../../shared/contrast.ts';
import { nearest } from '../../shared/nearest.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import type { Theme } from './book.ts';

import type { YamlReading } from './read-yaml.ts';

/** Theme as `bowbook.yaml` has it, its colours already known to be well formed. */
export interface WrittenTheme {
  readonly colours?:
    | {
        readonly ink?: string | undefined;
        readonly paper?: string | undefined;
        readonly accent?: string | undefined;
      }
    | undefined;
  readonly picture?: string | undefined;
}

/** Default ink and paper, the same as in `tokens.css`. */
const ownInk = '#22262b';
const ownPaper = '#f6f3ec';

/** Least contrast of text with what it stands on: WCAG 2.2, 1.4.3. */
const leastContrast = 4.5;

/** Checks the colours and picture of a book. Colours with too little contrast become a problem and are not used. */
export function themeOf(
  { colours, picture }: WrittenTheme,
  media: readonly string[],
  placeOf: YamlReading<unknown>['placeOf'],
): { readonly theme: Theme | null; readonly problems: readonly Problem[] } {
  if (colours === undefined && picture === undefined) return { theme: null, problems: [] };
  const paper = colours?.paper ?? ownPaper;
  const faint = [
    ['ink', colours?.ink ?? ownInk] as const,
    ...(colours?.accent === undefined ? [] : [['accent', colours.accent] as const]),
  ].flatMap(([name, found]) => {
    const contrast = contrastOf(found, paper);
    if (contrast >= leastContrast) return [];
    const facts = { name, paper, contrast: Math.floor(contrast * 10) / 10, least: leastContrast };
    const given = colours?.[name] === undefined ? 'paper' : name;
    return [problem('colour-faint', placeOf(['colours', given]), { facts, actual: found })];
  });
  const missing =
    picture === undefined || media.includes(picture)
      ? []
      : [
          problem('picture-missing', placeOf(['picture']), {
            actual: picture,
            expected: media,
            nearest: nearest(picture, media),
          }),
        ];
  const kept = faint.length > 0 ? undefined : colours;
  const theme: Theme = {
    ink: kept?.ink?.toLowerCase() ?? null,
    paper: kept?.paper?.toLowerCase() ?? null,
    accent: kept?.accent?.toLowerCase() ?? null,
    picture: missing.length > 0 ? null : (picture ?? null),
  };
  return { theme, problems: [...faint, ...missing] };
}
