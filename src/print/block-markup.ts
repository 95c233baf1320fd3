import { bestPlan } from '../../shared/bowing/best-plan.ts';
import { type BarRange, barRangeText } from '../../shared/music/bar-range.ts';
import { resolvePassage } from '../../shared/music/resolve-passage.ts';
import type {
  AnchorBlock,
  BlockKind,
  BlockOf,
  ClipBlock,
  DrillBlock,
  NotesBlock,
  Page,
  PlanBlock,
  ShowTuneBlock,
} from '../read/book.ts';
import { bodyMarkup, type Running } from './body-markup.ts';
import { drillPlace, paperDrills } from './compose-drills.ts';
import { fitCells } from './fit-rows.ts';
import { mapMarkup } from './map-markup.ts';
import { call, list, literal, type Markup, words } from './markup.ts';
import {
  isPrinted,
  type PrintContext,
  printable,
  rowValue,
  sayBars,
  titleOf,
  tuneReference,
  tuneText,
} from './print-context.ts';
import type { PrintTune } from './print-input.ts';

/** Makes the markup of the text and blocks of a page. `level`: that of its first headings. */
export function pageMarkup(context: PrintContext, page: Page, level: number): Markup {
  const running: Running = {
    context,
    page,
    level,
    block: index => {
      const block = page.blocks[index];
      if (!block) throw new Error(`the page has no block ${index}`);
      return blockMarkup(block, running);
    },
  };
  return bodyMarkup(page.body, running);
}

/** How a print shows one kind of block. */
interface BlockOnPaper<K extends BlockKind> {
  /** Makes the markup of the block; empty where a print does not show it. */
  readonly markup: (block: BlockOf<K>, running: Running) => Markup;
  /** Whether the sheets of the tunes that it is about follow the lesson. */
  readonly bringsSheets: boolean;
}

/** A tune is printed as its story and a reference to its sheet; a recording as its name. */
const onPaper: { readonly [K in BlockKind]: BlockOnPaper<K> } = {
  tune: {
    markup: (block, running) =>
      tuneMarkup(block.id, bodyMarkup(block.body, running), running.context),
    bringsSheets: true,
  },
  'show-tune': { markup: excerptMarkup, bringsSheets: true },
  anchor: { markup: anchorMarkup, bringsSheets: true },
  plan: { markup: planMarkup, bringsSheets: false },
  map: { markup: ({ of }, { context }) => tuneMapMarkup(of, context), bringsSheets: true },
  drill: { markup: drillReference, bringsSheets: false },
  clip: { markup: clipMarkup, bringsSheets: false },
  set: {
    markup: (block, running) =>
      `${bodyMarkup(block.body, running)}\n\n${setMarkup(block.tunes, running.context)}\n\n`,
    bringsSheets: false,
  },
  private: { markup: () => '', bringsSheets: false },
  stroke: { markup: strokeMarkup, bringsSheets: false },
  notes: { markup: chainMarkup, bringsSheets: false },
};

const blockMarkup = <K extends BlockKind>(block: BlockOf<K>, running: Running): Markup =>
  onPaper[block.kind as K].markup(block, running);

/** Ids of the tunes whose sheets follow a lesson, in the order of their first block. */
export const sheetsAfter = (lesson: Page): readonly string[] => [
  ...new Set(
    lesson.blocks
      .filter(block => !block.hidden && onPaper[block.kind].bringsSheets)
      .flatMap(block => block.about),
  ),
];

function strokeMarkup({ direction }: BlockOf<'stroke'>, { context }: Running): Markup {
  return call('sign', [literal(direction), literal(context.words.siteWords[direction])]);
}

function tuneMapMarkup(id: string, context: PrintContext): Markup {
  const tune = context.input.tunes.get(id);
  return tune && isPrinted(tune) ? `\n\n${mapMarkup(context, tune, tune.study)}\n\n` : '';
}

function excerptMarkup({ of, bars }: ShowTuneBlock, { context }: Running): Markup {
  return tuneMarkup(of, bars === null ? '' : excerptOf(of, bars, context), context);
}

/** A reference to a drill at the end of the book; empty where the print does not have it. */
function drillReference(block: DrillBlock, { context }: Running): Markup {
  const drill = paperDrills(context).find(d => d.block === block);
  const place = drill && drillPlace(drill.number);
  if (!drill || !place || !context.places.has(place)) return '';
  const name = context.words.printWords.drillNamed(
    drill.number,
    drill.told.title,
    titleOf(drill.tune),
  );
  const text = words(tuneText(context, drill.tune, name));
  const page = call('page-of', [literal(place)]);
  return `\n\n${call('tune-line', [], `${call('see', [literal(place)], text)}, ${page}`)}\n\n`;
}

/** The name of a recording; empty where it is not published. */
function clipMarkup(block: ClipBlock, { context }: Running): Markup {
  const tune = context.input.tunes.get(block.of);
  if (!tune?.published || !block.published) return '';
  return `\n\n${call('quiet', [], words(tuneText(context, tune, context.words.printWords.recording(block.words))))}\n\n`;
}

/** Makes the markup of the tunes of a set, each with the times it is played. */
export const setMarkup = (
  tunes: readonly { readonly of: string; readonly times: number }[],
  context: PrintContext,
): Markup =>
  call(
    'enum',
    tunes.map(
      t =>
        `[${tuneReference(context, t.of)}${words(`, ${context.words.siteWords.timesThrough(t.times)}`)}]`,
    ),
  );

function tuneMarkup(id: string, inner: Markup, context: PrintContext): Markup {
  const tune = context.input.tunes.get(id);
  const why = tune && !tune.published ? words(` (${context.words.printWords.withheldMark})`) : '';
  return `\n\n${call('tune-line', [], `${tuneReference(context, id)}${why}`)}\n\n${inner}\n\n`;
}

/** The rows of notation that contain some bars of a tune. */
function excerptOf(id: string, bars: BarRange, context: PrintContext): Markup {
  const tune = context.input.tunes.get(id);
  if (!tune || !isPrinted(tune)) return '';
  const found = resolvePassage(tune.study.tune, bars);
  return 'unknown' in found ? '' : passage(context, tune, found.first, found.last);
}

function passage(context: PrintContext, tune: PrintTune, first: number, last: number): Markup {
  if (!isPrinted(tune)) return '';
  const { study, score } = tune;
  const cells = score.cells.filter(cell =>
    cell.bars.some(b => {
      const bar = study.tune.bars[b];
      return bar !== undefined && bar.first <= last && bar.end > first;
    }),
  );
  const said = sayBars(study, context.words);
  const rows = fitCells(study, score, cells, context.look, context.width, context.input.draw);
  const values = rows.map(row => rowValue(context, tune, row, said(row.bars)));
  return values.length === 0 ? '' : `\n\n${call('passage', [list(values)])}\n\n`;
}

function anchorMarkup(block: AnchorBlock, running: Running): Markup {
  const { context } = running;
  const tune = context.input.tunes.get(block.of);
  if (!tune) throw new Error(`the tune ${block.of} was not built`);
  const anchor = tune.study?.bowing.anchors.find(a => a.id === block.id);
  const where = tuneText(
    context,
    tune,
    context.words.siteWords.anchorOf(titleOf(tune), barRangeText(block.bars)),
  );
  const told =
    anchor && isPrinted(tune) ? context.words.arrivalSentences(anchor).map(a => a.sentence) : [];
  return [
    '',
    call('alike', [], `#strong[${words(context.words.siteWords.anchor)}] ${words(where)}`),
    anchor ? passage(context, tune, anchor.first, anchor.last) : '',
    anchor
      ? `${call('sign', [literal(anchor.direction), '""'])} ${words(context.words.siteWords.reachIt(anchor.direction))}`
      : '',
    bodyMarkup(block.body, running),
    words(tuneText(context, tune, told.join(' '))),
    '',
  ].join('\n\n');
}

/** Most plans, or mends, that a page shows. */
const mostPlans = 3;

function planMarkup(block: PlanBlock, { context }: Running): Markup {
  const [of = ''] = block.about;
  const tune = context.input.tunes.get(of);
  const anchor = tune?.study?.bowing.anchors.find(a => a.id === block.to);
  if (!tune || !anchor || !isPrinted(tune)) return '';
  const say = (text: string): string => tuneText(context, tune, text);
  const asked = anchor.asked.find(a => a.level === block.level && a.preset === block.preset);
  const leadIns = asked?.leadIns ?? anchor.leadIns;
  const best = bestPlan(leadIns)?.leadIn;
  const plans = (best?.plans ?? []).slice(0, mostPlans);
  const ways = plans.map(
    p =>
      `[${words(say(`${context.words.planSentence(tune.study.tune, p)} ${context.words.strokeCount(p.strokes)}`))}]`,
  );
  const listed = anchor.mends.slice(0, mostPlans);
  const mends = listed.map(m => context.words.editSentence(tune.study.tune, m));
  const more =
    ways.length > 0 && best
      ? context.words.moreWays(best, ways.length)
      : context.words.moreMends(anchor.mends.length - listed.length + anchor.moreMends);
  if (ways.length === 0 && mends.length === 0) return '';
  return [
    '',
    call(
      'alike',
      [],
      `#strong[${words(context.words.printWords.waysTo(tuneText(context, tune, titleOf(tune))))}]`,
    ),
    ways.length > 0
      ? call('enum', ways)
      : call(
          'list',
          mends.map(m => `[${words(say(m))}]`),
        ),
    ...(more === null ? [] : [words(say(more))]),
    '',
  ].join('\n\n');
}

/** Notes of one stroke follow its sign together. */
function chainMarkup(block: NotesBlock, { context, page }: Running): Markup {
  const say = (text: string): string => printable(context, text, page.title, block.place);
  const notes = context.input.noteChain(block);
  if (notes === null) return call('plainly', [], words(say(block.abc)));
  return notes
    .map((note, i) => {
      const sign =
        note.slurred && i > 0
          ? ''
          : `${call('sign', [literal(note.direction), literal(context.words.siteWords[note.direction])])} `;
      const spoken = note.spoken === null ? '' : ` ${words(note.spoken)}`;
      const next = notes[i + 1];
      const comma = next === undefined ? '' : words(next.slurred ? ' – ' : ', ');
      return `${sign}#strong[${words(say(note.letter))}]${spoken}${comma}`;
    })
    .join('');
}
