import { nearest } from '../../shared/nearest.ts';
import { type Place, type Problem, problem } from '../../shared/problem.ts';
import type { LinkTarget, PageNames } from './page-names.ts';

/** Names of the whole book, to which any page may refer. */
export interface BookNames {
  readonly tunes: ReadonlyMap<string, Place>;
  /** Ids of tunes by the slug of their title, where only one has it. */
  readonly titled: ReadonlyMap<string, string>;
  readonly anchors: ReadonlyMap<string, Place>;
  /** Id of the tune of each anchor; none where its page leaves the tune open. */
  readonly anchorOf: ReadonlyMap<string, string>;
  readonly presets: readonly string[];
  /** Pages by file. */
  readonly pages: ReadonlyMap<string, LinkTarget>;
  readonly media: ReadonlySet<string>;
  /** Files of pages that are unfinished, and so not in the site. */
  readonly unfinished: ReadonlySet<string>;
}

/**
 * Gathers the names that pages define. Tunes, anchors and sets share one set of names; a name given
 * twice is a problem that names the other place.
 */
export function gatherNames(pages: readonly PageNames[]): Pick<
  BookNames,
  'tunes' | 'titled' | 'anchors' | 'anchorOf'
> & {
  readonly problems: readonly Problem[];
} {
  const tunes = new Map<string, Place>();
  const anchors = new Map<string, Place>();
  const sets = new Map<string, Place>();
  const problems: Problem[] = [];
  function add(to: Map<string, Place>, id: string, place: Place): void {
    const other = tunes.get(id) ?? anchors.get(id) ?? sets.get(id);
    if (!other) to.set(id, place);
    else {
      const facts = { file: other.file, line: other.line };
      problems.push(problem('id-repeated', place, { actual: id, facts }));
    }
  }
  for (const seed of pages.flatMap(page => page.tunes)) add(tunes, seed.id, seed.place);
  for (const seed of pages.flatMap(page => page.anchors)) add(anchors, seed.id, seed.place);
  for (const seed of pages.flatMap(page => page.sets)) add(sets, seed.id, seed.place);
  const anchorOf = pages.flatMap(page =>
    page.anchors.flatMap(({ id, of }) => (of === null ? [] : [[id, of] as const])),
  );
  return { tunes, titled: byTitle(pages), anchors, anchorOf: new Map(anchorOf), problems };
}

function byTitle(pages: readonly PageNames[]): ReadonlyMap<string, string> {
  const ids = new Map<string, string[]>();
  for (const { id, title } of pages.flatMap(page => page.tunes)) {
    if (title !== '') ids.set(title, [...(ids.get(title) ?? []), id]);
  }
  return new Map(
    [...ids].flatMap(([title, [id, ...more]]) =>
      id !== undefined && more.length === 0 ? [[title, id] as const] : [],
    ),
  );
}

/** Makes the problem of an unknown name, with the nearest known one. */
export function unknownName(
  kind: 'tune' | 'anchor',
  id: string,
  place: Place,
  known: ReadonlyMap<string, Place>,
): Problem {
  const names = [...known.keys()];
  return problem(`${kind}-unknown`, place, {
    actual: id,
    expected: names,
    nearest: nearest(id, names),
  });
}
