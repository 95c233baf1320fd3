import { drillSource } from '../../shared/drills/drill-source.ts';
import { makeDrill } from '../../shared/drills/make-drill.ts';
import type { Bead, ToldDrill, ToldItem } from '../../shared/words/told-drill.ts';
import type { Book, DrillBlock } from '../read/book.ts';
import { call, list, literal, type Markup, named, words } from './markup.ts';
import { isPrinted, type PrintContext, printedWords, titleOf, tuneText } from './print-context.ts';
import type { PrintTune } from './print-input.ts';

/** A drill of a lesson, numbered through the book. */
interface PaperDrill {
  readonly number: number;
  readonly block: DrillBlock;
  readonly tune: PrintTune;
  readonly told: ToldDrill;
}

/** Label of a drill in the print. */
export const drillPlace = (number: number): string => `drill/${number}`;

/** Makes the drills of all lessons, oldest first, without those that a tune cannot give. */
export function paperDrills({ input }: Pick<PrintContext, 'input'>): readonly PaperDrill[] {
  const { tellDrill, noteNames } = printedWords(input);
  const made = drillBlocks(input.book).flatMap(block => {
    const tune = input.tunes.get(block.of);
    if (!tune || !isPrinted(tune)) return [];
    const { bowing } = input.book.settings;
    const source = drillSource(tune.study, {
      bowing: { ...bowing, restart: tune.block.restart ?? bowing.restart },
      start: tune.block.start,
    });
    const { drill } = makeDrill(source, {
      kind: block.drill,
      level: block.level ?? bowing.level,
      seed: block.seed,
      to: block.to,
    });
    return drill ? [{ block, tune, told: tellDrill(source, drill, noteNames) }] : [];
  });
  return made.map((drill, i) => ({ ...drill, number: i + 1 }));
}

const drillBlocks = ({ lessons }: Book): readonly DrillBlock[] =>
  lessons
    .toReversed()
    .flatMap(page => page.blocks)
    .filter((b): b is DrillBlock => b.kind === 'drill' && !b.hidden);

/** Composes the drills and, from a new page, their answers. */
export function drillsChapter(context: PrintContext): Markup {
  const drills = paperDrills(context);
  if (drills.length === 0) return '';
  return [
    call('chapter', ['"drills"', literal(context.words.printWords.drills)]),
    words(context.words.printWords.drillsLead),
    ...drills.map(drill => drillMarkup(context, drill)),
    call('chapter', ['"answers"', literal(context.words.printWords.answers)]),
    ...drills.map(drill => answerMarkup(context, drill)),
  ].join('\n\n');
}

const nameOf = (context: PrintContext, { number, tune, told }: PaperDrill): string =>
  tuneText(context, tune, context.words.printWords.drillNamed(number, told.title, titleOf(tune)));

function drillMarkup(context: PrintContext, drill: PaperDrill): Markup {
  const { told, tune, number } = drill;
  const say = (text: string): Markup => words(tuneText(context, tune, text));
  const inside = [
    ...told.question.map(say),
    ...told.chains.map(chain =>
      [chain.name === null ? '' : say(chain.name), chainMarkup(context, tune, chain.beads)].join(
        '\n\n',
      ),
    ),
    ...told.items.map(item => itemMarkup(context, tune, item)),
    '#write-line',
  ];
  return call(
    'drill',
    [literal(drillPlace(number)), literal(nameOf(context, drill))],
    inside.filter(m => m !== '').join('\n\n'),
  );
}

/** A question and its choices; choices that are notes are given as letters. */
function itemMarkup(context: PrintContext, tune: PrintTune, { ask, choices }: ToldItem): Markup {
  const single = choices.every(c => c.beads === null || c.beads.length === 1);
  const say = (text: string): Markup => words(tuneText(context, tune, text));
  if (single) {
    // Choices that are notes make one chain; the others follow it.
    const row = choices.flatMap(c => c.beads ?? []);
    const labels = choices.filter(c => c.beads === null).map(c => c.label);
    const chain = row.length === 0 ? '' : chainMarkup(context, tune, row);
    return [`#strong[${say(ask)}]`, chain, say(labels.join('   ·   '))].join('\n\n');
  }
  const shown = choices.map(
    c => `[${say(c.label)} ${c.beads === null ? '' : chainMarkup(context, tune, c.beads)}]`,
  );
  return `#strong[${say(ask)}]\n\n${call('list', shown)}`;
}

/** A chain of notes, those of one slur joined. */
function chainMarkup(context: PrintContext, tune: PrintTune, beads: readonly Bead[]): Markup {
  const groups: Bead[][] = [];
  for (const bead of beads) {
    const last = groups.at(-1);
    if (bead.slurred && last) last.push(bead);
    else groups.push([bead]);
  }
  const value = (bead: Bead, first: boolean): string =>
    `(${[
      named(
        'letter',
        bead.letter === null ? 'none' : literal(tuneText(context, tune, bead.letter)),
      ),
      named('place', bead.where === null ? 'none' : literal(bead.where)),
      named('stroke', bead.stroke === null || !first ? 'none' : literal(bead.stroke)),
      named('bar', bead.bar === null ? 'none' : literal(tuneText(context, tune, bead.bar))),
    ].join(', ')})`;
  const values = groups.map(group => list(group.map((bead, i) => value(bead, i === 0))));
  return call('beads', [list(values)]);
}

function answerMarkup(context: PrintContext, drill: PaperDrill): Markup {
  const { told, tune, number } = drill;
  const answer = tuneText(context, tune, [...told.answer, told.why].join(' '));
  return call('answer', [
    literal(drillPlace(number)),
    literal(nameOf(context, drill)),
    literal(answer),
  ]);
}
