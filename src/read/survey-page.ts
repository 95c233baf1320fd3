import type { Code, Nodes, Root, RootContent } from 'mdast';
import { type Place, type Problem, problem } from '../../shared/problem.ts';
import { abcFences, abcTitle, hasFileHeader, isAbcFence } from './abc-fence.ts';
import { tuneFacts, valueReader } from './attribute-values.ts';
import type { Fence } from './book.ts';
import { type Directive, type DirectiveNode, readDirective } from './read-directive.ts';
import type { TuneFacts } from './read-front-matter.ts';
import { slug } from './slug.ts';
import { placeAt, type SourceText } from './source-text.ts';

/**
 * The first look at a page: its directives read, and what it defines. References are resolved
 * later, when every page of the book has been surveyed.
 */
export interface PageSurvey {
  readonly directives: ReadonlyMap<RootContent, Directive>;
  /** Tunes by the node that defines them: a `:::tune`, or a fence on its own, which may hold more. */
  readonly tunes: ReadonlyMap<RootContent, readonly TuneSeed[]>;
  readonly anchors: ReadonlyMap<RootContent, AnchorSeed>;
  readonly sets: ReadonlyMap<RootContent, SetSeed>;
  readonly problems: readonly Problem[];
}

export interface TuneSeed {
  readonly id: string;
  readonly place: Place;
  readonly abc: Fence;
  readonly facts: TuneFacts;
}

export interface AnchorSeed {
  readonly id: string;
  readonly place: Place;
  /** The tune it is written to be of, or the one above it; null where neither is plain. */
  readonly of: string | null;
}

export interface SetSeed {
  readonly id: string;
  readonly place: Place;
}

export function surveyPage(tree: Root, source: SourceText): PageSurvey {
  const directives = new Map<RootContent, Directive>();
  const tunes = new Map<RootContent, readonly TuneSeed[]>();
  const anchors = new Map<RootContent, AnchorSeed>();
  const sets = new Map<RootContent, SetSeed>();
  /** The tunes of the nearest definition or showing above. */
  let above: readonly string[] = [];
  const problems: Problem[] = [];

  function look(node: Nodes, ancestors: readonly Nodes[]): void {
    if (node.type !== 'root') lookAt(node, ancestors);
    if ('children' in node) for (const child of node.children) look(child, [...ancestors, node]);
  }

  function lookAt(content: RootContent, ancestors: readonly Nodes[]): void {
    const inPrivate = ancestors.some(a => a.type === 'containerDirective' && a.name === 'private');
    const place = placeAt(
      source.file,
      content.position?.start.line ?? 1,
      content.position?.start.column ?? 1,
    );
    if (isDirective(content) && !isBareText(content, source)) {
      const reading = readDirective(content, source);
      problems.push(...reading.problems);
      if (!reading.directive) return;
      directives.set(content, reading.directive);
      const defines = content.type === 'containerDirective' && content.name !== 'private';
      if (defines && inPrivate) {
        problems.push(definedInPrivate(`:::${content.name}`, place));
      } else if (defines && content.name === 'tune') {
        define(content, tuneOf(content.children, reading.directive));
      } else if (defines) {
        const { values } = reading.directive;
        const seed = named(reading.directive, place);
        const of = values.of?.text.trim() || (above.length === 1 ? above[0] : null);
        if (seed && content.name === 'set') sets.set(content, seed);
        else if (seed) anchors.set(content, { ...seed, of: of ?? null });
      } else if (content.type === 'leafDirective' && content.name === 'tune') {
        const of = reading.directive.values.of?.text.trim();
        if (of) above = [of];
      }
    } else if (isAbcFence(content) && !ancestors.some(isTune)) {
      if (inPrivate) problems.push(definedInPrivate('abc', place));
      else define(content, tunesOf(content, place));
    }
  }

  function define(content: RootContent, found: readonly TuneSeed[]): void {
    tunes.set(content, found);
    if (found.length > 0) above = found.map(seed => seed.id);
  }

  function named(directive: Directive, place: Place): SetSeed | null {
    const id = valueReader(directive, problems).id();
    return id ? { id, place: directive.values.id?.place ?? place } : null;
  }

  function tuneOf(children: readonly RootContent[], directive: Directive): readonly TuneSeed[] {
    const [fence, second] = children.filter(isAbcFence);
    const facts = tuneFacts(directive, problems);
    const given = valueReader(directive, problems).id();
    if (!fence) {
      problems.push(problem('tune-without-abc', 'error', directive.place));
      return [];
    }
    const [abc, another] = checkedFences(fence);
    const extra = second?.position?.start.line ?? another?.line;
    if (extra !== undefined) {
      problems.push(problem('tune-twice', 'error', placeAt(source.file, extra, 1)));
    }
    if (!abc) return [];
    const place = directive.values.id?.place ?? directive.place;
    return seeds(
      given ?? (directive.values.id ? null : titleId(abc, directive.place)),
      abc,
      place,
      facts,
    );
  }

  function tunesOf(fence: Code, place: Place): readonly TuneSeed[] {
    if (fence.meta) {
      problems.push(problem('abc-meta', 'error', place, { actual: fence.meta }));
    }
    return checkedFences(fence).flatMap((abc, i) => {
      const at = i === 0 ? place : placeAt(abc.file, abc.line, abc.indent + 1);
      return seeds(titleId(abc, at), abc, at, {});
    });
  }

  function checkedFences(fence: Code): readonly Fence[] {
    const found = abcFences(fence, source);
    const at = placeAt(source.file, found[0]?.line ?? 1, 1);
    if (fence.value.trim() === '') {
      problems.push(problem('tune-without-abc', 'error', at));
      return [];
    }
    if (found.length > 1 && hasFileHeader(fence.value)) {
      problems.push(problem('abc-file-header', 'warning', at));
    }
    return found;
  }

  function titleId(abc: Fence, place: Place): string | null {
    const id = slug(abcTitle(abc.text) ?? '');
    if (id === '') problems.push(problem('tune-without-id', 'error', place));
    return id || null;
  }

  look(tree, []);
  return { directives, tunes, anchors, sets, problems };
}

const seeds = (
  id: string | null,
  abc: Fence,
  place: Place,
  facts: TuneFacts,
): readonly TuneSeed[] => (id === null ? [] : [{ id, place, abc, facts }]);

const isTune = (node: { readonly type: string }): boolean =>
  node.type === 'containerDirective' && (node as DirectiveNode).name === 'tune';

export const isDirective = (node: RootContent): node is DirectiveNode =>
  node.type === 'containerDirective' ||
  node.type === 'leafDirective' ||
  node.type === 'textDirective';

/**
 * Whether a text directive is really prose: `10:30`, `Remember:slur`, `see :above`. A bare name is
 * prose unless it is a block's own name at the start of a word, where the label was forgotten.
 */
export function isBareText(node: DirectiveNode, { text }: SourceText): boolean {
  if (node.type !== 'textDirective') return false;
  const from = node.position?.start.offset ?? 0;
  const written = text.slice(from, node.position?.end.offset ?? from);
  if (written !== `:${node.name}`) return /^\d/.test(node.name);
  const startsWord = from === 0 || /[\s([{"'“‘]/.test(text.charAt(from - 1));
  return !(startsWord && ['stroke', 'notes', 'private'].includes(node.name));
}

const definedInPrivate = (found: string, place: Place): Problem =>
  problem('defined-in-private', 'error', place, { actual: found });
