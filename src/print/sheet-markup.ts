import { barRangeText } from '../../shared/music/bar-range.ts';
import { meterText } from '../../shared/music/meter.ts';
import type { SheetStep } from '../../shared/print-kinds.ts';
import type { Study } from '../../shared/study.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { AnchorBlock } from '../read/book.ts';
import type { Shown } from './draw-row.ts';
import { firstNotes, phraseStarts } from './fade.ts';
import { fitTune } from './fit-rows.ts';
import { mapMarkup } from './map-markup.ts';
import { call, list, literal, type Markup, words } from './markup.ts';
import { isPrinted, type Press, rowValue, sayBars, titleOf, tuneText } from './press.ts';
import type { PrintTune } from './print-input.ts';

/**
 * A tune's sheet, on a page of its own or on two: title and kind, map, where all play alike, rows
 * of notation, credits at the foot. The fading step leaves out from the end what is known by heart.
 */
export function sheetMarkup(
  press: Press,
  tune: PrintTune,
  { level, step }: { readonly level: number; readonly step: SheetStep },
): Markup {
  const say = (text: string): string => tuneText(press, tune, text);
  const { study } = tune;
  const [first] = press.options.steps;
  const head = [
    quietLine(say(factsOf(study, press.words))),
    step > 1 ? quietLine(press.words.printWords.stepLead(step)) : '',
    isPrinted(tune) && step <= 3 ? mapMarkup(press, tune, tune.study) : '',
    isPrinted(tune) && step <= 3 ? alikeMarkup(press, tune) : '',
    isPrinted(tune) ? '' : words(press.words.printWords.unreadable),
  ];
  return `${call('sheet', [
    literal(step === first ? tune.block.id : `${tune.block.id}/${step}`),
    `${level}`,
    literal(say(step === 1 ? titleOf(tune) : press.words.printWords.stepOf(titleOf(tune), step))),
    `[${head.filter(m => m !== '').join('\n\n')}]`,
    list(sheetRows(press, tune, step)),
    `[${[say(tune.credits), ...(level === 1 ? [press.words.printWords.care] : [])].map(quietLine).join('\n\n')}]`,
  ])}\n\n`;
}

const quietLine = (text: string): Markup =>
  text === '' ? '' : call('quiet', [], call('plainly', [], words(text)));

/** `reel in E dorian, 4/4. Also called …`. */
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

function alikeMarkup(press: Press, tune: PrintTune): Markup {
  const pages = [
    ...press.input.book.lessons,
    ...press.input.book.tunePages,
    ...press.input.book.pages,
  ];
  const blocks = pages
    .flatMap(p => p.blocks)
    .filter((b): b is AnchorBlock => b.kind === 'anchor' && b.of === tune.block.id && !b.hidden);
  const told = blocks.flatMap(block => {
    const anchor = tune.study?.bowing.anchors.find(a => a.id === block.id);
    return anchor
      ? [press.words.printWords.alikeAt(barRangeText(block.bars), anchor.direction)]
      : [];
  });
  if (told.length === 0) return '';
  return call(
    'plainly',
    [],
    `#strong[${words(`${press.words.printWords.alike}. `)}]${words(tuneText(press, tune, told.join(' ')))}`,
  );
}

function sheetRows(press: Press, tune: PrintTune, step: SheetStep): readonly string[] {
  if (!isPrinted(tune) || step === 3 || step === 5) return [];
  const { study, score } = tune;
  const { look, width, input } = press;
  const shown: Shown | undefined =
    step === 2 ? phraseStarts(study) : step === 4 ? firstNotes : undefined;
  const rows = fitTune(study, score, look, width, input.draw, shown);
  if (step === 4) {
    const [first] = rows;
    return first
      ? [
          rowValue(
            press,
            tune,
            first,
            press.words.printWords.firstNotesRow(firstSpoken(study, press.words)),
          ),
        ]
      : [];
  }
  const said = sayBars(study, press.words);
  return rows.map(row => {
    const names = row.bars.map(b => study.tune.bars[b]?.name ?? '').join(', ');
    return rowValue(
      press,
      tune,
      row,
      step === 2 ? press.words.printWords.fadedRow(names) : said(row.bars),
    );
  });
}

/** `E, E, E`. */
export const firstSpoken = ({ tune }: Study, words: Words, count = 3): string =>
  tune.events
    .flatMap(e => (e.kind === 'note' ? [words.spokenPitches(e.pitches, words.noteNames)] : []))
    .slice(0, count)
    .join(', ');
