import { posix } from 'node:path';
import type { Root } from 'mdast';
import { toString as plainText } from 'mdast-util-to-string';
import { type Problem, problem } from '../../shared/problem.ts';
import { abcTitle } from './abc-fence.ts';
import type { Block, BookSettings, Page } from './book.ts';
import type { BookNames } from './book-names.ts';
import { buildBlocks, type PageBlocks } from './build-blocks.ts';
import { checkFences, checkProse } from './check-fences.ts';
import { pageHashes } from './page-hash.ts';
import type { LinkTarget, PageNames } from './page-names.ts';
import { parseMarkdown } from './parse-markdown.ts';
import { textPastLimit, treePastLimit } from './past-limit.ts';
import { type FrontMatter, isDate, readFrontMatter } from './read-front-matter.ts';
import { nameHeadings } from './resolve-links.ts';
import { slug } from './slug.ts';
import { placeAt, type SourceText } from './source-text.ts';
import { type PageSurvey, surveyPage } from './survey-page.ts';

/** A page after its first step of reading, before the names of other pages are known. */
export interface PageDraft {
  readonly kind: Page['kind'];
  readonly source: SourceText;
  readonly slug: string;
  readonly tree: Root;
  readonly front: FrontMatter;
  readonly survey: PageSurvey;
  readonly target: LinkTarget;
  readonly problems: readonly Problem[];
  /** A fence is wrong, the front matter is not closed, or a limit is passed: no block or text is used. */
  readonly sealed: boolean;
}

/**
 * Reads what one page holds by itself: front matter, headings, the names that it defines. What
 * refers to other pages is read by `finishPage`.
 */
export function unfinishedPage(kind: Page['kind'], source: SourceText): PageDraft {
  const { tree, past } = treeOf(source);
  const { front, bodyLine, problems: frontProblems } = readFrontMatter(source, tree);
  const fences = past ? [past] : checkFences(source, tree, bodyLine);
  const survey = surveyPage(tree, source);
  const name = slug(posix.basename(source.file, '.md'));
  const headings = nameHeadings(tree);
  const sealed = fences.length > 0 || frontProblems.some(p => p.rule === 'front-matter-unclosed');
  return {
    kind,
    source,
    slug: name,
    tree,
    front,
    survey,
    target: { sitePath: sitePath(kind, name, survey), headings },
    // Other problems of such a page may be consequences of the fault, and would hide it.
    problems: sealed
      ? [...frontProblems, ...fences]
      : [...frontProblems, ...survey.problems, ...checkProse(source, tree)],
    sealed,
  };
}

/** Where a page stands in the site: a tune page is that of its first tune. */
function sitePath(kind: Page['kind'], slug: string, survey: PageSurvey): string | null {
  if (kind !== 'tune') return `${kind === 'lesson' ? 'lessons' : 'pages'}/${slug}.html`;
  const [first] = [...survey.tunes.values()].flat();
  return first ? `tunes/${first.id}.html` : null;
}

/** The tree of a page; empty where something of the page is past a limit. */
function treeOf(source: SourceText): { readonly tree: Root; readonly past: Problem | null } {
  const long = textPastLimit(source);
  if (long) return { tree: { type: 'root', children: [] }, past: long };
  const tree = parseMarkdown(source.text);
  const past = treePastLimit(tree, source.file);
  return past ? { tree: { type: 'root', children: [] }, past } : { tree, past: null };
}

/** The names that a page defines. */
export const namesOf = (draft: PageDraft): PageNames => {
  const { kind, source, front, target, survey } = draft;
  return {
    kind,
    file: source.file,
    slug: draft.slug,
    isUnfinished: front.unfinished ?? false,
    target,
    tunes: [...survey.tunes.values()].flat().map(({ id, place, abc }) => ({
      id,
      place,
      title: slug(abcTitle(abc.text) ?? ''),
    })),
    anchors: [...survey.anchors.values()],
    sets: [...survey.sets.values()],
  };
};

/** A page of the book, the media files that it refers to, and what is wrong with it. */
export interface FinishedPage {
  readonly page: Page;
  readonly media: PageBlocks['media'];
  readonly problems: readonly Problem[];
}

/** Reads the blocks of a page. A page with an error keeps its blocks, to be checked, but not its text. */
export function finishPage(
  draft: PageDraft,
  names: BookNames,
  settings: BookSettings,
): FinishedPage {
  const { kind, source, tree, front, survey, sealed } = draft;
  const heading = sealed ? null : openingHeading(tree);
  const shown = heading?.takesTitle && front.title === undefined ? heading.rest : tree;
  const built = sealed
    ? { body: empty, blocks: [], media: noMedia, problems: [] }
    : buildBlocks({ source, tree: shown, survey, front, names, settings });
  const { date, problems: dateProblems } = dateOf(draft);
  const problems = [...draft.problems, ...built.problems, ...dateProblems, ...emptyTunePage(draft)];
  const broken = problems.some(p => p.severity === 'error');
  const page = {
    kind,
    slug: draft.slug,
    title: front.title ?? heading?.title ?? draft.slug,
    date,
    ...(front.unfinished ? { unfinished: true as const } : {}),
    summary: front.summary ?? null,
    body: broken ? empty : built.body,
    blocks: broken ? built.blocks.flatMap(withoutText) : built.blocks,
  };
  return {
    page: { ...page, file: source.file, hashes: pageHashes(page) },
    media: built.media,
    problems,
  };
}

const noMedia: ReadonlySet<string> = new Set();

const empty: Page['body'] = { type: 'root', children: [] };

/** The block without its text, for later stages to check; none for a block that is text alone. */
function withoutText(block: Block): readonly Block[] {
  if (block.kind === 'private' || block.kind === 'notes') return [];
  return ['body' in block ? { ...block, body: empty } : block];
}

/** A first heading of the first level is the page's title, and not shown a second time. */
function openingHeading(tree: Root) {
  const at = tree.children.findIndex(node => node.type !== 'yaml');
  const first = tree.children[at];
  if (first?.type !== 'heading' || first.depth !== 1) return null;
  const title = plainText(first).trim();
  const rest: Root = { ...tree, children: tree.children.filter(node => node !== first) };
  return { title, takesTitle: title !== '', rest };
}

/** A lesson's day stands in its front matter or at the head of its file's name. */
function dateOf({ kind, source, front, problems }: PageDraft) {
  const named = posix.basename(source.file).slice(0, 10);
  const date = front.date ?? (isDate(named) ? named : null);
  // A front matter that could not be read may have a date.
  if (kind !== 'lesson' || date !== null || problems.length > 0) return { date, problems: [] };
  return { date, problems: [problem('lesson-date-missing', placeAt(source.file, 1, 1))] };
}

function emptyTunePage({ kind, source, survey, problems }: PageDraft): readonly Problem[] {
  if (kind !== 'tune' || survey.tunes.size > 0 || problems.length > 0) return [];
  return [problem('tune-page-empty', placeAt(source.file, 1, 1))];
}
