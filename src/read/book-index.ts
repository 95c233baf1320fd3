import { nearest } from '../../shared/nearest.ts';
import { type Place, type Problem, problem } from '../../shared/problem.ts';
import type { Page } from './book.ts';
import type { PageSurvey } from './survey-page.ts';

/** Names of the whole book, to which any page may refer. */
export interface BookIndex {
  readonly tunes: ReadonlyMap<string, Place>;
  readonly anchors: ReadonlyMap<string, Place>;
  readonly presets: readonly string[];
  /** Pages by file, with the site path each is found at; null for a tune page without tunes. */
  readonly pages: ReadonlyMap<string, IndexedPage>;
  readonly media: ReadonlySet<string>;
  /** Files that are drafts, and so not in the site. */
  readonly drafts: ReadonlySet<string>;
}

export interface IndexedPage {
  readonly sitePath: string | null;
  /** Names of its headings. */
  readonly headings: ReadonlySet<string>;
}

/** Where a page stands in the site: a tune page is that of its first tune. */
export function sitePath(kind: Page['kind'], slug: string, survey: PageSurvey): string | null {
  if (kind !== 'tune') return `${kind === 'lesson' ? 'lessons' : 'pages'}/${slug}.html`;
  const [first] = [...survey.tunes.values()].flat();
  return first ? `tunes/${first.id}.html` : null;
}

/** Tunes and anchors share one set of names; a name given twice tells of the other place. */
export function indexNames(surveys: readonly PageSurvey[]): {
  readonly tunes: ReadonlyMap<string, Place>;
  readonly anchors: ReadonlyMap<string, Place>;
  readonly problems: readonly Problem[];
} {
  const tunes = new Map<string, Place>();
  const anchors = new Map<string, Place>();
  const problems: Problem[] = [];
  function add(to: Map<string, Place>, id: string, place: Place): void {
    const other = tunes.get(id) ?? anchors.get(id);
    if (!other) to.set(id, place);
    else {
      const facts = { file: other.file, line: other.line };
      problems.push(problem('id-repeated', 'error', place, { actual: id, facts }));
    }
  }
  for (const survey of surveys) {
    for (const seed of [...survey.tunes.values()].flat()) add(tunes, seed.id, seed.place);
  }
  for (const survey of surveys) {
    for (const seed of survey.anchors.values()) add(anchors, seed.id, seed.place);
  }
  return { tunes, anchors, problems };
}

/** Says that a name is unknown, and which known one is nearest. */
export function unknownName(
  kind: 'tune' | 'anchor',
  id: string,
  place: Place,
  known: ReadonlyMap<string, Place>,
): Problem {
  const names = [...known.keys()];
  return problem(`${kind}-unknown`, 'error', place, {
    actual: id,
    expected: names,
    nearest: nearest(id, names),
  });
}
