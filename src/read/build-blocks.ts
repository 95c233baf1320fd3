import type { Root as Hast } from 'hast';
import type { Root, RootContent } from 'mdast';
import { type Place, type Problem, problem } from '../../shared/problem.ts';
import { isAbcFence } from './abc-fence.ts';
import { valueReader } from './attribute-values.ts';
import type { BlockBase, BlockSpec, ReadBlock } from './blocks/block-spec.ts';
import { type Block, specNamed } from './blocks/block-specs.ts';
import { tune, tuneBlock } from './blocks/tune.ts';
import { type BookNames, unknownName } from './book-names.ts';
import type { BookSettings } from './book-settings.ts';
import { type AnyDefinition, definitionsOf, isDefinition } from './definitions.ts';
import { blockSign, type Directive } from './directive.ts';
import { toBody } from './parse-markdown.ts';
import type { FrontMatter } from './read-front-matter.ts';
import { hasTarget, resolveLink } from './resolve-links.ts';
import { placeAt, type SourceText, writtenText } from './source-text.ts';
import { isBareText, isDirective, type PageSurvey } from './survey-page.ts';

/** A surveyed page, and what its blocks may name: the book's tunes, anchors and settings. */
export interface PageRequest {
  readonly source: SourceText;
  readonly tree: Root;
  readonly survey: PageSurvey;
  readonly front: FrontMatter;
  readonly names: BookNames;
  readonly settings: BookSettings;
}

/** The body and the blocks of a page, and what is wrong with them. */
export interface PageBlocks {
  readonly body: Hast;
  /** Blocks with an error are left out; then indices in `body` are no longer theirs, and it must not be used. */
  readonly blocks: readonly Block[];
  /** Media files that the page refers to, outside private notes. */
  readonly media: ReadonlySet<string>;
  readonly problems: readonly Problem[];
}

/**
 * Reads the directives of a page as blocks and puts an element `bow-block` with the block's index in the
 * place of each. The content of each container becomes a body of its own, so that no body contains the
 * content of another.
 */
export function buildBlocks(request: PageRequest): PageBlocks {
  const { source, tree, survey, front, names, settings } = request;
  const blocks: (Block | null)[] = [];
  const problems: Problem[] = [];
  const definitions = definitionsOf(tree);
  /** Ids of the tunes that the nearest block above defines or shows. */
  let above: readonly string[] = [];
  let bodies = 0;
  const media = new Set<string>();

  const placeOf = (node: RootContent): Place =>
    placeAt(source.file, node.position?.start.line ?? 1, node.position?.start.column ?? 1);

  /** Takes the index of a block before its content is read, so that blocks are in page order. */
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
      return seeds.map(seed => {
        const block = tuneBlock(seed, front, settings, emptyBody());
        return mark(blocks.push(completed(tune, block, hidden)) - 1);
      });
    }
    checkReference(node, hidden);
    const next = hasTarget(node) ? withTarget(node, hidden) : node;
    if (next === null) return wordsOf(node, hidden);
    return 'children' in next
      ? [{ ...next, children: changed(next.children as RootContent[], hidden) } as RootContent]
      : [next];
  }

  /** Replaces a link by its text and a picture by its description, where the target does not exist. */
  function wordsOf(node: RootContent, hidden: boolean): RootContent[] {
    if (node.type === 'image') return [{ type: 'text', value: node.alt ?? '' }];
    return 'children' in node ? changed(node.children as RootContent[], hidden) : [];
  }

  function blocksOf(node: RootContent, directive: Directive, hidden: boolean): RootContent[] {
    const spec = specNamed(directive.form, directive.name);
    const at = reserve();
    const block = spec?.read(directive, {
      source,
      front,
      settings,
      names,
      problems,
      values: valueReader(directive, problems),
      content: 'children' in node ? (node.children as RootContent[]) : [],
      id: (survey.anchors.get(node) ?? survey.sets.get(node))?.id ?? null,
      seed: survey.tunes.get(node)?.[0] ?? null,
      bodyOf: (content, isPrivate) => bodyOf(content, isPrivate ?? hidden),
      tuneNamed: () => tuneNamed(directive, spec.required.includes('of')),
      putAbove(tunes) {
        above = tunes;
      },
    });
    if (!spec || !block) return [];
    blocks[at] = completed(spec, block, hidden);
    return [mark(at)];
  }

  /** Adds `about` and `hidden` to a block as read. */
  function completed<B extends BlockBase>(
    spec: BlockSpec<B>,
    block: ReadBlock<B>,
    hidden: boolean,
  ): Block {
    const about = [...new Set(spec.about(block, names))];
    return { ...block, about, ...(hidden ? { hidden } : {}) } as unknown as Block;
  }

  /** See `BlockContext`; with `isRequired` the tune above does not stand in for a missing `of`. */
  function tuneNamed({ values, place, form, name }: Directive, isRequired: boolean): string | null {
    const written = values.of?.text.trim();
    if (values.of && written) {
      if (names.tunes.has(written)) return written;
      problems.push(unknownName('tune', written, values.of.place, names.tunes));
      return null;
    }
    const [only, ...more] = above;
    if (only !== undefined && more.length === 0) return only;
    if (isRequired) return null;
    const facts = { block: blockSign(form, name) };
    problems.push(
      only === undefined
        ? problem('of-missing', place, { facts, expected: [...names.tunes.keys()] })
        : problem('of-unclear', place, { facts, expected: above }),
    );
    return null;
  }

  function withTarget<T extends { url: string } & RootContent>(node: T, hidden: boolean): T | null {
    const kind = node.type === 'image' ? 'image' : 'link';
    const resolved = resolveLink(node.url, kind, source.file, placeOf(node), names);
    if (resolved.media !== null && !hidden) media.add(resolved.media);
    if (resolved.problem) problems.push(resolved.problem);
    return resolved.url === null ? null : { ...node, url: resolved.url };
  }

  function dropHtml(html: string, place: Place): RootContent[] {
    const rest = html.replace(/<!--[\s\S]*?-->/g, '').trim();
    if (rest !== '') {
      const tag = /^<[^>\n]*>?/.exec(rest)?.[0] ?? rest.slice(0, 30);
      problems.push(problem('html-dropped', place, { actual: tag }));
    }
    return [];
  }

  function checkReference(node: RootContent, hidden: boolean): void {
    if (hidden || !('identifier' in node) || !definitions.isHidden(node)) return;
    const name = node.label ?? node.identifier;
    const actual = node.type === 'footnoteReference' ? `[^${name}]` : `[${name}]`;
    problems.push(problem('reference-into-private', placeOf(node), { actual }));
  }

  function proseOf(node: RootContent): RootContent {
    return { type: 'text', value: writtenText(node, source) };
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
