import { barRangeText } from '../../shared/music/bar-range.ts';
import { meterText } from '../../shared/music/meter.ts';
import { at } from '../../shared/must.ts';
import type { SheetStep } from '../../shared/print-kinds.ts';
import type { Study } from '../../shared/study.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { AnchorBlock } from '../read/book.ts';
import type { Shown } from './draw-row.ts';
import { firstNotes, phraseStarts } from './fade.ts';
import { fitTune } from './fit-rows.ts';
import { mapMarkup } from './map-markup.ts';
import { call, list, literal, type Markup, words } from './markup.ts';
import {
  isPrinted,
  type PrintContext,
  rowValue,
  sayBars,
  titleOf,
  tuneText,
} from './print-context.ts';
import type { PrintTune } from './print-input.ts';

/**
 * Makes the sheet of a tune, one page or two: title and kind, map, anchors, rows of notation, credits. Each
 * fading step shows less of the notation, until only the title is left.
 */
export function sheetMarkup(
  context: PrintContext,
  tune: PrintTune,
  { level, step }: { readonly level: number; readonly step: SheetStep },
): Markup {
  const say = (text: string): string => tuneText(context, tune, text);
  const { study } = tune;
  const [first] = context.options.steps;
  const head = [
    quietLine(say(factsOf(study, context.words))),
    step > 1 ? quietLine(context.words.printWords.stepLead(step)) : '',
    isPrinted(tune) && step <= 3 ? mapMarkup(context, tune, tune.study) : '',
    isPrinted(tune) && step <= 3 ? alikeMarkup(context, tune) : '',
    isPrinted(tune) ? '' : words(context.words.printWords.unreadable),
  ];
  return `${call('sheet', [
    literal(step === first ? tune.block.id : `${tune.block.id}/${step}`),
    `${level}`,
    literal(say(step === 1 ? titleOf(tune) : context.words.printWords.stepOf(titleOf(tune), step))),
    `[${head.filter(m => m !== '').join('\n\n')}]`,
    list(sheetRows(context, tune, step)),
    `[${[say(tune.credits), ...(level === 1 ? [context.words.printWords.care] : [])].map(quietLine).join('\n\n')}]`,
  ])}\n\n`;
}

const quietLine = (text: string): Markup =>
  text === '' ? '' : call('quiet', [], call('plainly', [], words(text)));

/** Kind, metre and other names: `Reel in E dorian, 4/4. Also called …`. */
function factsOf(study: Study | null, words: Words): string {
  const { keyName, kindName, typeName, noteNames } = words;
  if (study === null) return '';
  const { type, rhythm, key, meter, aliases } = study.tune;
  const name = type === null ? rhythm : typeName[type];
  const kind = kindName(name, keyName(key, noteNames));
  const metre = meter.free
    ? ''
    : `, ${meter.sign === null ? meterText(meter) : `${meter.beats}/${meter.unit}`}`;
  const also = aliases.length > 0 ? ` ${words.printWords.alsoCalled(aliases.join(', '))}.` : '';
  return `${kind.charAt(0).toUpperCase()}${kind.slice(1)}${metre}.${also}`;
}

function alikeMarkup(context: PrintContext, tune: PrintTune): Markup {
  const pages = [
    ...context.input.book.lessons,
    ...context.input.book.tunePages,
    ...context.input.book.pages,
  ];
  const blocks = pages
    .flatMap(p => p.blocks)
    .filter((b): b is AnchorBlock => b.kind === 'anchor' && b.of === tune.block.id && !b.hidden);
  const told = blocks.flatMap(block => {
    const anchor = tune.study?.bowing.anchors.find(a => a.id === block.id);
    return anchor
      ? [context.words.printWords.alikeAt(barRangeText(block.bars), anchor.direction)]
      : [];
  });
  if (told.length === 0) return '';
  return call(
    'plainly',
    [],
    `#strong[${words(`${context.words.printWords.alike}. `)}]${words(tuneText(context, tune, told.join(' ')))}`,
  );
}

function sheetRows(context: PrintContext, tune: PrintTune, step: SheetStep): readonly string[] {
  if (!isPrinted(tune) || step === 3 || step === 5) return [];
  const { study, score } = tune;
  const { look, width, input } = context;
  const shown: Shown | undefined =
    step === 2 ? phraseStarts(study) : step === 4 ? firstNotes : undefined;
  const rows = fitTune(study, score, look, width, input.draw, shown);
  if (step === 4) {
    const [first] = rows;
    return first
      ? [
          rowValue(
            context,
            tune,
            first,
            context.words.printWords.firstNotesRow(firstSpoken(study, context.words)),
          ),
        ]
      : [];
  }
  const said = sayBars(study, context.words);
  return rows.map(row => {
    const names = row.bars.map(b => at(study.tune.bars, b).name).join(', ');
    return rowValue(
      context,
      tune,
      row,
      step === 2 ? context.words.printWords.fadedRow(names) : said(row.bars),
    );
  });
}

/** The first notes in words: `E, E, E`. */
export const firstSpoken = ({ tune }: Study, words: Words, count = 3): string =>
  tune.events
    .flatMap(e => (e.kind === 'note' ? [words.spokenPitches(e.pitches, words.noteNames)] : []))
    .slice(0, count)
    .join(', ');
