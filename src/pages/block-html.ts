import type { Anchor } from '../../shared/bowing/bowing.ts';
import { barRangeText } from '../../shared/music/bar-range.ts';
import type { Direction } from '../../shared/music/tune.ts';
import { mapSections } from '../../shared/sections/map-sections.ts';
import type { ScoreCell } from '../engrave/score.ts';
import type {
  AnchorBlock,
  Block,
  ClipBlock,
  DrillBlock,
  MapBlock,
  NotesBlock,
  PlanBlock,
  PrivateBlock,
  ShowTuneBlock,
  TuneBlock,
} from '../read/book.ts';
import { anchorView } from './anchor-view.ts';
import type { BuiltTune } from './built-tune.ts';
import { byEarView } from './by-ear-view.ts';
import { clipView } from './clip-view.ts';
import { drillView, mayDrill } from './drill-view.ts';
import { titleOf, tuneKind } from './lists-view.ts';
import { tuneMap } from './map-view.ts';
import { cellsOver, notationView } from './notation-view.ts';
import { eventsOfRange } from './note-range.ts';
import { claimId, mayShow, type PageContext, tunePath } from './page-context.ts';
import { planView } from './plan-view.ts';
import { playerView } from './player-view.ts';
import { type Html, html, render } from './render.ts';
import { setView } from './set-view.ts';
import type { ChainNote } from './site.ts';
import { tryView } from './try-view.ts';

/** The HTML of one of the page's blocks, where it stands in running text. */
export function blockHtml(index: number, context: PageContext): string {
  const block = context.page?.blocks[index];
  if (!block) throw new Error(`the page has no block ${index}`);
  return makeBlock(block, context);
}

function makeBlock(block: Block, context: PageContext): string {
  const { words } = context;
  switch (block.kind) {
    case 'tune':
      return tuneHtml(block, block.body, context);
    case 'show-tune':
      return tuneHtml(block, null, context);
    case 'anchor':
      return anchorHtml(block, context);
    case 'plan':
      return planHtml(block, context);
    case 'map':
      return mapHtml(block, context);
    case 'private':
      return privateHtml(block, context);
    case 'stroke':
      return render(
        'parts/sign',
        {
          direction: block.direction,
          alt: words.siteWords[block.direction],
        },
        words,
      ).trim();
    case 'notes':
      return notesHtml(block, context);
    case 'clip':
      return clipHtml(block, context);
    case 'set':
      return render('parts/set', setView(block, innerHtml(block.body, context), context), words);
    case 'drill':
      return drillHtml(block, context);
  }
}

function tuneHtml(
  block: TuneBlock | ShowTuneBlock,
  story: TuneBlock['body'] | null,
  context: PageContext,
): string {
  const id = block.kind === 'tune' ? block.id : block.of;
  const tune = context.input.tunes.get(id);
  if (!tune) throw new Error(`the tune ${id} was not built`);
  const { study, score } = tune;
  const shown = study && score && mayShow(tune, context.input);
  const range = study && block.kind === 'show-tune' && block.bars;
  const events = range ? eventsOfRange(study.tune, range) : null;
  const cells = study && score && events ? cellsOver(study, score, events) : (score?.cells ?? []);
  return render(
    'parts/tune',
    {
      id: claimId(context, id),
      title: titleOf(tune),
      kind: study === null ? null : tuneKind(study, context.words),
      href: context.root + tunePath(id),
      byEar: shown && block.byEar ? byEarView(study, events, context.words) : null,
      notation: shown ? notationView(id, score, context, cells) : null,
      player: shown ? playerView(tune, context, events && phrasesOf(cells)) : null,
      whyNoNotation:
        study === null || score === null
          ? context.words.siteWords.unreadable
          : context.words.siteWords.withheld,
      story: story && innerHtml(story, context),
      credits: tune.credits,
    },
    context.words,
  );
}

/** The phrases that cells stand in, once each. */
const phrasesOf = (cells: readonly ScoreCell[]): readonly number[] => [
  ...new Set(cells.map(c => c.phrase)),
];

function clipHtml(block: ClipBlock, context: PageContext): string {
  const tune = context.input.tunes.get(block.of);
  const view = tune ? clipView(block, tune, context) : null;
  return view ? render('parts/clip', view, context.words) : '';
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

function planHtml(block: PlanBlock, context: PageContext): string {
  const anchor = context.index.anchors.get(block.to);
  const tune = anchor && context.input.tunes.get(anchor.of);
  if (!tune) throw new Error(`the anchor ${block.to} is not in the book`);
  const studied = tune.study?.bowing.anchors.find(a => a.id === block.to);
  if (!tune.study || !studied) return noticeHtml(context.words.siteWords.unreadable, context);
  if (!mayShow(tune, context.input)) return noticeHtml(context.words.siteWords.withheld, context);
  return render(
    'parts/plan-block',
    {
      id: claimId(context, `plan-${block.to}`),
      where: context.words.siteWords.anchorOf(titleOf(tune), barRangeText(anchor.bars)),
      href: `${context.root}${tunePath(anchor.of)}#${anchor.id}`,
      plan: planView(
        { ...tune, study: tune.study },
        { ...studied, leadIns: leadInsOf(studied, block) },
        block.level,
        context,
      ),
      trial: tryView({ ...tune, study: tune.study }, studied, block, context),
    },
    context.words,
  );
}

/** The lead-ins under the level and preset that a plan block asks for. */
const leadInsOf = (anchor: Anchor, { level, preset }: PlanBlock): Anchor['leadIns'] =>
  anchor.asked.find(a => a.level === level && a.preset === preset)?.leadIns ?? anchor.leadIns;

function mapHtml(block: MapBlock, context: PageContext): string {
  const tune = context.input.tunes.get(block.of);
  if (!tune?.study) return noticeHtml(context.words.siteWords.noMap, context);
  const path = `${context.root}${tunePath(block.of)}`;
  return render(
    'parts/map-block',
    {
      id: claimId(context, `map-${block.of}`),
      title: titleOf(tune),
      href: path,
      map: tuneMap(block.unit === null ? tune : mappedBy(block.unit, tune), context, path),
    },
    context.words,
  );
}

/** The tune mapped in phrases of so many bars. No drawing is cut at them, so none is linked to. */
function mappedBy(unit: number, tune: BuiltTune): BuiltTune {
  const { study } = tune;
  if (study === null) return tune;
  return { ...tune, score: null, study: { ...study, map: mapSections(study.tune, unit, null) } };
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

/** Nothing at all in a published copy, so that no trace of the teacher's notes leaves the house. */
function privateHtml(block: PrivateBlock, context: PageContext): string {
  if (!context.input.isPrivate) return '';
  return render('parts/private', { body: innerHtml(block.body, context) }, context.words);
}

function notesHtml(block: NotesBlock, context: PageContext): string {
  const notes = context.input.noteChain(block);
  if (notes === null) return render('parts/verbatim', { text: block.abc }, context.words).trim();
  return render('parts/notes', { strokes: chainStrokes(notes, context) }, context.words).trim();
}

interface ChainStroke {
  readonly direction: Direction;
  readonly alt: string;
  readonly slurred: boolean;
  readonly notes: readonly ChainNote[];
}

/** A chain by stroke: notes taken in one stroke stand together. */
function chainStrokes(notes: readonly ChainNote[], { words }: PageContext): readonly ChainStroke[] {
  const strokes: ChainNote[][] = [];
  for (const note of notes) {
    const last = strokes.at(-1);
    if (note.slurred && last) last.push(note);
    else strokes.push([note]);
  }
  return strokes.flatMap(group => {
    const direction = group[0]?.direction;
    if (direction === undefined) return [];
    return [
      { direction, alt: words.siteWords[direction], slurred: group.length > 1, notes: group },
    ];
  });
}

const noticeHtml = (text: string, { words }: PageContext): string =>
  render('parts/notice', { text }, words);

/** The body of a container, whose blocks are the page's too; null when nothing is in it. */
export function innerHtml(body: TuneBlock['body'], context: PageContext): Html | null {
  const text = context.input.bodyHtml(
    body,
    index => blockHtml(index, context),
    context.words.siteWords,
  );
  return text.trim() === '' ? null : html(text);
}
