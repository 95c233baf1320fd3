import type {
  AnchorBlock,
  Block,
  BlockKind,
  BlockOf,
  ClipBlock,
  DrillBlock,
  PrivateBlock,
  TuneBlock,
} from '../read/book.ts';
import { anchorView } from './anchor-view.ts';
import { mapHtml } from './blocks/map-html.ts';
import { notesHtml } from './blocks/notes-html.ts';
import { noticeHtml } from './blocks/notice-html.ts';
import { planHtml } from './blocks/plan-html.ts';
import { tuneHtml } from './blocks/tune-html.ts';
import { clipView } from './clip-view.ts';
import { drillView, mayDrill } from './drill-view.ts';
import type { PageContext } from './page-context.ts';
import { type Html, html, render } from './render.ts';
import { setView } from './set-view.ts';

/** How a page shows one kind of block. */
interface BlockView<K extends BlockKind> {
  /** The HTML of the block where it stands in a page's text. */
  readonly html: (block: BlockOf<K>, context: PageContext) => string;
  /** A tune's own page shows it in a place of its own, and leaves it out of the tune's story. */
  readonly hasOwnPlace: boolean;
}

const views: { readonly [K in BlockKind]: BlockView<K> } = {
  tune: {
    html: (block, context) => tuneHtml(block, () => innerHtml(block.body, context), context),
    hasOwnPlace: false,
  },
  'show-tune': {
    html: (block, context) => tuneHtml(block, () => null, context),
    hasOwnPlace: true,
  },
  anchor: { html: anchorHtml, hasOwnPlace: true },
  plan: { html: planHtml, hasOwnPlace: true },
  map: { html: mapHtml, hasOwnPlace: true },
  drill: { html: drillHtml, hasOwnPlace: false },
  clip: { html: clipHtml, hasOwnPlace: false },
  set: {
    html: (block, context) =>
      render('parts/set', setView(block, innerHtml(block.body, context), context), context.words),
    hasOwnPlace: false,
  },
  private: { html: privateHtml, hasOwnPlace: false },
  stroke: { html: strokeHtml, hasOwnPlace: false },
  notes: { html: notesHtml, hasOwnPlace: false },
};

/** Makes the HTML of a block of the page, by its index. Throws where the page has no such block. */
export function blockHtml(index: number, context: PageContext): string {
  const block = context.page?.blocks[index];
  if (!block) throw new Error(`the page has no block ${index}`);
  return show(block, context);
}

const show = <K extends BlockKind>(block: BlockOf<K>, context: PageContext): string =>
  views[block.kind as K].html(block, context);

/** Whether a tune's own page shows such a block in a place of its own. */
export const hasOwnPlace = (block: Block): boolean => views[block.kind].hasOwnPlace;

function strokeHtml({ direction }: BlockOf<'stroke'>, { words }: PageContext): string {
  return render('parts/sign', { direction, alt: words.siteWords[direction] }, words).trim();
}

function anchorHtml(block: AnchorBlock, context: PageContext): string {
  const tune = context.input.tunes.get(block.of);
  if (!tune) throw new Error(`the tune ${block.of} was not built`);
  return render(
    'parts/anchor',
    anchorView(block, tune, innerHtml(block.body, context), context),
    context.words,
  );
}

function clipHtml(block: ClipBlock, context: PageContext): string {
  const tune = context.input.tunes.get(block.of);
  const view = tune ? clipView(block, tune, context) : null;
  return view ? render('parts/clip', view, context.words) : '';
}

function drillHtml(block: DrillBlock, context: PageContext): string {
  const tune = context.input.tunes.get(block.of);
  if (!tune?.study) return noticeHtml(context.words.siteWords.unreadable, context);
  if (!mayDrill(tune, context)) return noticeHtml(context.words.siteWords.withheld, context);
  const view = drillView(block, tune, context);
  return typeof view === 'string'
    ? noticeHtml(view, context)
    : render('parts/drill', view, context.words);
}

/** The teacher's private notes; empty in a public site. */
function privateHtml(block: PrivateBlock, context: PageContext): string {
  if (!context.input.isPrivate) return '';
  return render('parts/private', { body: innerHtml(block.body, context) }, context.words);
}

/** Makes the HTML of a container's body, whose block indices count through the page; null where it is empty. */
export function innerHtml(body: TuneBlock['body'], context: PageContext): Html | null {
  const text = context.input.bodyHtml(
    body,
    index => blockHtml(index, context),
    context.words.siteWords,
  );
  return text.trim() === '' ? null : html(text);
}
