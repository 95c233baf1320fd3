import type { Root as Hast } from 'hast';
import type { Root, RootContent } from 'mdast';
import { type Place, type Problem, problem } from '../../shared/problem.ts';
import { isAbcFence } from './abc-fence.ts';
import { valueReader } from './attribute-values.ts';
import type { Block, BookSettings } from './book.ts';
import { type BookIndex, unknownName } from './book-index.ts';
import { clipBlock } from './clip-block.ts';
import { type AnyDefinition, definitionsOf, isDefinition } from './definitions.ts';
import { toBody } from './parse-markdown.ts';
import type { Directive } from './read-directive.ts';
import type { FrontMatter } from './read-front-matter.ts';
import { readSet } from './read-set.ts';
import { hasTarget, resolveLink } from './resolve-links.ts';
import { shownBy } from './show.ts';
import { drillBlock, notesBlock, planBlock, strokeBlock } from './simple-blocks.ts';
import { placeAt, type SourceText } from './source-text.ts';
import { isBareText, isDirective, type PageSurvey, type TuneSeed } from './survey-page.ts';
import { tuneBlock } from './tune-block.ts';

export interface PageRequest {
  readonly source: SourceText;
  readonly tree: Root;
  readonly survey: PageSurvey;
  readonly front: FrontMatter;
  readonly index: BookIndex;
  readonly settings: BookSettings;
}

export interface PageBlocks {
  readonly body: Hast;
  /** Blocks with an error are left out, and the marks in `body` then miss their aim. */
  readonly blocks: readonly Block[];
  /** Media files that the page refers to, outside private notes. */
  readonly media: ReadonlySet<string>;
  readonly problems: readonly Problem[];
}

/**
 * The second look at a page: every directive becomes a block and its node a mark, `bow-block`, with
 * the block's index. Each container's content is made into a body of its own, so that a body never
 * holds what stands in another.
 */
export function buildBlocks(request: PageRequest): PageBlocks {
  const { source, tree, survey, front, index, settings } = request;
  const blocks: (Block | null)[] = [];
  const problems: Problem[] = [];
  const definitions = definitionsOf(tree);
  /** The tunes of the nearest definition or showing above. */
  let above: readonly string[] = [];
  let bodies = 0;
  const media = new Set<string>();

  const placeOf = (node: RootContent): Place =>
    placeAt(source.file, node.position?.start.line ?? 1, node.position?.start.column ?? 1);

  /** A place for a block, kept before its content is read, so that blocks stand in page order. */
  function reserve(): number {
    return blocks.push(null) - 1;
  }

  function bodyOf(children: readonly RootContent[], hidden: boolean): Hast {
    bodies += 1;
    const number = bodies;
    const own = changed(children, hidden);
    const shared = hidden ? [...open, ...secret] : open;
    return toBody({ type: 'root', children: [...own, ...shared] }, number);
  }

  function changed(nodes: readonly RootContent[], hidden: boolean): RootContent[] {
    return nodes.flatMap(node => change(node, hidden));
  }

  function change(node: RootContent, hidden: boolean): RootContent[] {
    // Definitions are handed to each body by `bodyOf`.
    if (node.type === 'yaml' || isDefinition(node)) return [];
    if (node.type === 'html') return dropHtml(node.value, placeOf(node));
    if (isDirective(node)) {
      if (isBareText(node, source)) return [proseOf(node)];
      const directive = survey.directives.get(node);
      return directive ? blocksOf(node, directive, hidden) : [];
    }
    if (isAbcFence(node)) {
      const seeds = survey.tunes.get(node) ?? [];
      if (seeds.length > 0) above = seeds.map(seed => seed.id);
      return seeds.map(seed => mark(add(tuneBlock(seed, front, settings, emptyBody()))));
    }
    checkReference(node, hidden);
    const next = hasTarget(node) ? withTarget(node, hidden) : node;
    if (next === null) return wordsOf(node, hidden);
    return 'children' in next
      ? [{ ...next, children: changed(next.children as RootContent[], hidden) } as RootContent]
      : [next];
  }

  /** A link or picture that leads nowhere leaves its words. */
  function wordsOf(node: RootContent, hidden: boolean): RootContent[] {
    if (node.type === 'image') return [{ type: 'text', value: node.alt ?? '' }];
    return 'children' in node ? changed(node.children as RootContent[], hidden) : [];
  }

  function add(block: Block): number {
    return blocks.push(block) - 1;
  }

  function blocksOf(node: RootContent, directive: Directive, hidden: boolean): RootContent[] {
    const inside = 'children' in node ? (node.children as RootContent[]) : [];
    const seed = survey.tunes.get(node)?.[0];
    const at = reserve();
    const block =
      directive.form === 'container'
        ? containerOf(node, directive, inside, seed, hidden)
        : simpleOf(directive);
    blocks[at] = block && hidden ? { ...block, hidden } : block;
    return block ? [mark(at)] : [];
  }

  function containerOf(
    node: RootContent,
    directive: Directive,
    content: readonly RootContent[],
    seed: TuneSeed | undefined,
    hidden: boolean,
  ): Block | null {
    if (directive.name === 'private') {
      return { kind: 'private', place: directive.place, body: bodyOf(content, true) };
    }
    if (directive.name === 'tune') {
      if (seed) above = [seed.id];
      const story = bodyOf(
        content.filter(child => !isAbcFence(child)),
        hidden,
      );
      return seed ? tuneBlock(seed, front, settings, story) : null;
    }
    if (directive.name === 'set') {
      const id = survey.sets.get(node)?.id ?? null;
      const { title, tunes, rest } = readSet(directive, id, content, source, index, problems);
      const body = bodyOf(rest, hidden);
      const { place } = directive;
      return id && tunes.length > 0 ? { kind: 'set', place, id, title, tunes, body } : null;
    }
    const anchorId = survey.anchors.get(node)?.id ?? null;
    const values = valueReader(directive, problems);
    const of = tuneNamed(directive);
    const bars = values.bars('bars');
    const start = values.direction('start');
    const hooks = values.hooks('hooks');
    const body = bodyOf(content, hidden);
    return of && bars && anchorId
      ? { kind: 'anchor', place: directive.place, id: anchorId, of, bars, start, hooks, body }
      : null;
  }

  function simpleOf(directive: Directive): Block | null {
    const { name, place } = directive;
    if (name === 'stroke') return strokeBlock(directive, problems);
    if (name === 'notes') return notesBlock(directive, problems);
    if (name === 'plan') return planBlock(directive, index, problems);
    const values = valueReader(directive, problems);
    const anchor = name === 'drill' ? values.text('to') : null;
    const of = directive.values.of
      ? tuneNamed(directive)
      : ((anchor && index.anchorOf.get(anchor)) ?? tuneNamed(directive));
    if (name === 'drill') return drillBlock(directive, of, index, problems);
    if (name === 'clip') return clipBlock(directive, of, index, problems);
    if (of === null) return null;
    if (name === 'map') return { kind: 'map', place, of, unit: values.count('unit', 16) };
    above = [of];
    const byEar = (values.oneOf('show', shownBy) ?? front.show) === 'ear';
    return { kind: 'show-tune', place, of, byEar, bars: values.bars('bars') };
  }

  /** The tune that a block is about: as `of` says, or the one above. */
  function tuneNamed(directive: Directive): string | null {
    const of = directive.values.of;
    const written = of?.text.trim();
    if (of && written) {
      if (index.tunes.has(written)) return written;
      problems.push(unknownName('tune', written, of.place, index.tunes));
      return null;
    }
    const [only, ...more] = above;
    if (only !== undefined && more.length === 0) return only;
    if (directive.form === 'leaf' && directive.name === 'tune') return null;
    const rule = only === undefined ? 'of-missing' : 'of-unclear';
    const facts = { block: `${directive.form === 'leaf' ? '::' : ':::'}${directive.name}` };
    problems.push(
      problem(rule, 'error', directive.place, {
        facts,
        expected: only === undefined ? [...index.tunes.keys()] : above,
      }),
    );
    return null;
  }

  function withTarget<T extends { url: string } & RootContent>(node: T, hidden: boolean): T | null {
    const kind = node.type === 'image' ? 'image' : 'link';
    const resolved = resolveLink(node.url, kind, source.file, placeOf(node), index);
    if (resolved.media !== null && !hidden) media.add(resolved.media);
    if (resolved.problem) problems.push(resolved.problem);
    return resolved.url === null ? null : { ...node, url: resolved.url };
  }

  function dropHtml(html: string, place: Place): RootContent[] {
    const rest = html.replace(/<!--[\s\S]*?-->/g, '').trim();
    if (rest !== '') {
      const tag = /^<[^>\n]*>?/.exec(rest)?.[0] ?? rest.slice(0, 30);
      problems.push(problem('html-dropped', 'warning', place, { actual: tag }));
    }
    return [];
  }

  function checkReference(node: RootContent, hidden: boolean): void {
    if (hidden || !('identifier' in node) || !definitions.isHidden(node)) return;
    const name = node.label ?? node.identifier;
    const actual = node.type === 'footnoteReference' ? `[^${name}]` : `[${name}]`;
    problems.push(problem('reference-into-private', 'error', placeOf(node), { actual }));
  }

  function proseOf(node: RootContent): RootContent {
    const from = node.position?.start.offset ?? 0;
    return { type: 'text', value: source.text.slice(from, node.position?.end.offset ?? from) };
  }

  function changedDefinition(node: AnyDefinition, hidden: boolean): readonly RootContent[] {
    if (node.type === 'footnoteDefinition') {
      const children = changed(node.children, hidden) as typeof node.children;
      return [{ ...node, children }];
    }
    const next = withTarget(node, hidden);
    return next ? [next] : [];
  }

  const open = definitions.open.flatMap(node => changedDefinition(node, false));
  const secret = definitions.hidden.flatMap(node => changedDefinition(node, true));
  const body = bodyOf(tree.children, false);
  return { body, blocks: blocks.filter(block => block !== null), media, problems };
}

const emptyBody = (): Hast => ({ type: 'root', children: [] });

/** The mark of a block; remark-rehype makes an element of it, in running text or between paragraphs. */
const mark = (index: number): RootContent =>
  ({
    type: 'bowBlock',
    data: { hName: 'bow-block', hProperties: { dataBlock: `${index}` } },
    children: [],
  }) as unknown as RootContent;
