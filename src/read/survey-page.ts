import type { Code, Nodes, Root, RootContent } from 'mdast';
import { type Place, type Problem, problem } from '../../shared/problem.ts';
import { abcFences, abcTitle, type Fence, hasFileHeader, isAbcFence } from './abc-fence.ts';
import { valueReader } from './attribute-values.ts';
import { blockNames, specNamed } from './blocks/block-specs.ts';
import { tuneFacts } from './blocks/tune.ts';
import { blockSign, type Directive } from './directive.ts';
import type { AnchorSeed, SetSeed, TuneSeed } from './page-names.ts';
import { type DirectiveNode, readDirective } from './read-directive.ts';
import type { TuneFacts } from './read-front-matter.ts';
import { slug } from './slug.ts';
import { offsetOf, placeAt, positionOf, type SourceText, writtenText } from './source-text.ts';

/**
 * The result of the first reading of a page: its directives, and the names that it defines. References
 * are resolved later, when every page of the book has been surveyed.
 */
export interface PageSurvey {
  readonly directives: ReadonlyMap<RootContent, Directive>;
  /** Tunes by the node that defines them: a `:::tune`, or a fence on its own, which may hold more. */
  readonly tunes: ReadonlyMap<RootContent, readonly TuneSeed[]>;
  readonly anchors: ReadonlyMap<RootContent, AnchorSeed>;
  readonly sets: ReadonlyMap<RootContent, SetSeed>;
  readonly problems: readonly Problem[];
}

/** Reads the directives of a page and finds what it defines. */
export function surveyPage(tree: Root, source: SourceText): PageSurvey {
  const directives = new Map<RootContent, Directive>();
  const tunes = new Map<RootContent, readonly TuneSeed[]>();
  const anchors = new Map<RootContent, AnchorSeed>();
  const sets = new Map<RootContent, SetSeed>();
  /** Ids of the tunes that the nearest block above defines or shows. */
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
      const { form, name } = reading.directive;
      const defines = specNamed(form, name)?.defines;
      if (defines && inPrivate) {
        problems.push(definedInPrivate(blockSign(form, name), place));
      } else if (defines) {
        define(content, defines, reading.directive);
      } else if (form === 'leaf' && name === 'tune') {
        const of = reading.directive.values.of?.text.trim();
        if (of) above = [of];
      }
    } else if (isAbcFence(content) && !ancestors.some(isTune)) {
      if (inPrivate) problems.push(definedInPrivate('abc', place));
      else defineTunes(content, tunesOf(content, place));
    }
  }

  function define(
    content: RootContent,
    what: 'tune' | 'anchor' | 'set',
    directive: Directive,
  ): void {
    if (what === 'tune') {
      const children = 'children' in content ? (content.children as RootContent[]) : [];
      defineTunes(content, tuneOf(children, directive));
      return;
    }
    const id = valueReader(directive, problems).id();
    if (id === null) return;
    const seed = { id, place: directive.values.id?.place ?? directive.place };
    const of = directive.values.of?.text.trim() || (above.length === 1 ? above[0] : null);
    if (what === 'anchor') anchors.set(content, { ...seed, of: of ?? null });
    else sets.set(content, seed);
  }

  function defineTunes(content: RootContent, found: readonly TuneSeed[]): void {
    tunes.set(content, found);
    if (found.length > 0) above = found.map(seed => seed.id);
  }

  function tuneOf(children: readonly RootContent[], directive: Directive): readonly TuneSeed[] {
    const [fence, second] = children.filter(isAbcFence);
    const facts = tuneFacts(directive, problems);
    const given = valueReader(directive, problems).id();
    if (!fence) {
      problems.push(problem('tune-without-abc', directive.place));
      return [];
    }
    const [abc, another] = checkedFences(fence);
    const extra = second?.position?.start.line ?? another?.line;
    if (extra !== undefined) {
      problems.push(problem('tune-twice', placeAt(source.file, extra, 1)));
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
      problems.push(problem('abc-meta', place, { actual: fence.meta }));
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
      problems.push(problem('tune-without-abc', at));
      return [];
    }
    if (found.length > 1 && hasFileHeader(fence.value)) {
      problems.push(problem('abc-file-header', at));
    }
    return found;
  }

  function titleId(abc: Fence, place: Place): string | null {
    const id = slug(abcTitle(abc.text) ?? '');
    if (id === '') problems.push(problem('tune-without-id', place));
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

/** Whether a node is a directive of any form. */
export const isDirective = (node: RootContent): node is DirectiveNode =>
  node.type === 'containerDirective' ||
  node.type === 'leafDirective' ||
  node.type === 'textDirective';

/**
 * Whether what the parser took for a text directive is prose: `10:30`, `Remember:slur`, `see :above`. A bare name is
 * prose unless it is a block's own name at the start of a word, where the label was forgotten.
 */
export function isBareText(node: DirectiveNode, source: SourceText): boolean {
  if (node.type !== 'textDirective') return false;
  const written = writtenText(node, source);
  if (written !== `:${node.name}`) return /^\d/.test(node.name);
  const from = offsetOf(positionOf(node).start);
  const startsWord = from === 0 || /[\s([{"'“‘]/.test(source.text.charAt(from - 1));
  return !(startsWord && [...blockNames('text'), 'private'].includes(node.name));
}

const definedInPrivate = (found: string, place: Place): Problem =>
  problem('defined-in-private', place, { actual: found });
