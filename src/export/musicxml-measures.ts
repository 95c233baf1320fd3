import { writtenSlurs } from '../../shared/bowing/written-slurs.ts';
import { accidentalsInBar } from '../../shared/music/accidentals.ts';
import { completes, isShort } from '../../shared/music/bar-length.ts';
import { compare, type Fraction, fraction, toNumber } from '../../shared/music/fraction.ts';
import { divisionsFor, type WrittenLength, writeLength } from '../../shared/music/note-values.ts';
import type { Bar, Direction, Tempo, Tune } from '../../shared/music/tune.ts';
import { type Tuplet, tupletsOf } from '../../shared/music/tuplets.ts';
import { at } from '../../shared/must.ts';
import { printedStrokes } from '../../shared/notation/printed-strokes.ts';
import type { Study } from '../../shared/study.ts';
import { type Beam, beamsOf } from './beams.ts';
import { harmonyOf } from './chord-symbol.ts';
import { type Joins, joinsOf, noJoins } from './joins.ts';
import { keyElement, timeElement, tuningElement } from './musicxml-attributes.ts';
import { noteElements } from './musicxml-note.ts';
import { sameKey, sameMeter } from './same-signature.ts';
import { writtenSigns } from './written-signs.ts';
import { element, type XmlElement } from './xml.ts';

/** Facts of the whole tune that its bars are written from. */
interface Scope {
  readonly study: Study;
  readonly tempo: Tempo;
  /** Divisions per crotchet, and the length of one division in whole notes. */
  readonly divisions: number;
  readonly division: Fraction;
  /** The note values of each event, by event index. */
  readonly lengths: readonly WrittenLength[];
  readonly joins: ReadonlyMap<number, Joins>;
  readonly tuplets: ReadonlyMap<number, Tuplet>;
  readonly strokes: ReadonlyMap<number, Direction>;
  /** Indices of bars that a repeat goes back to, with or without a start-repeat sign. */
  readonly returns: ReadonlySet<number>;
  /** Indices of bars after which a repeat goes back. */
  readonly turns: ReadonlySet<number>;
  readonly beams: ReadonlyMap<number, readonly Beam[]>;
}

/** The bars of a tune as `measure` elements, in written order. `tempo` stands over the first. */
export function measureElements(study: Study, tempo: Tempo): readonly XmlElement[] {
  const { tune, performance } = study;
  const tuplets = tupletsOf(tune);
  const lengths = tune.events.map(({ duration }, e) =>
    writeLength(duration, tuplets.get(e) ?? null),
  );
  const divisions = divisionsFor(lengths.flatMap(({ pieces }) => pieces.map(p => p.sounds)));
  const scope: Scope = {
    study,
    tempo,
    divisions,
    division: fraction(1, divisions * 4),
    lengths,
    joins: joinsOf(tune, performance),
    tuplets,
    strokes: writtenStrokes(study),
    returns: returnsOf(study),
    turns: turnsOf(study),
    beams: beamsOf(tune, lengths),
  };
  let count = 0;
  return tune.bars.map((bar, b) => {
    const implicit = isUncounted(tune, b);
    if (!implicit) count += 1;
    const number = implicit ? (count === 0 ? '0' : `X${b}`) : `${count}`;
    return element(
      'measure',
      [
        leftBarline(tune, b, scope.returns),
        attributesOf(scope, b),
        ...directionsOf(scope, b),
        ...eventsOf(scope, bar),
        rightBarline(tune, b, scope.turns.has(b)),
      ],
      { number, ...(implicit ? { implicit: 'yes' } : {}) },
    );
  });
}

/**
 * Stroke to print at each note, by event index. A note whose stroke varies from pass to pass has none,
 * unless the teacher marked it; a note that a slur joins to the one before begins no stroke, and has none.
 */
function writtenStrokes(study: Study): ReadonlyMap<number, Direction> {
  const strokes = new Map<number, Direction>();
  for (const [event, { direction, varies }] of printedStrokes(study)) {
    if (!varies) strokes.set(event, direction);
  }
  study.tune.events.forEach((event, e) => {
    if (event.kind === 'note' && event.mark !== null) strokes.set(e, event.mark);
  });
  writtenSlurs(study.tune).joined.forEach((joined, e) => {
    if (joined) strokes.delete(e);
  });
  return strokes;
}

/** Whether a bar has no number: a pickup, or the second half of a bar that a repeat sign divides. */
function isUncounted(tune: Tune, b: number): boolean {
  const [bar, before] = [at(tune.bars, b), tune.bars[b - 1]];
  if (bar.pickup) return true;
  return (
    before !== undefined &&
    !before.pickup &&
    before.part === bar.part &&
    isShort(before) &&
    isShort(bar) &&
    completes(before, bar)
  );
}

/** Bars that the performance goes back to: a repeat without its start sign is given one there. */
function returnsOf({ tune, performance }: Study): ReadonlySet<number> {
  const returns = new Set(tune.bars.flatMap((bar, b) => (bar.opensRepeat ? [b] : [])));
  if (tune.order !== null) return returns;
  performance.bars.forEach(({ bar }, i) => {
    const next = performance.bars[i + 1];
    if (next && next.bar <= bar && next.bar > 0) returns.add(next.bar);
  });
  return returns;
}

/** Bars with a repeat sign after which the performance goes back: a last ending that ends `:|` is not one. */
const turnsOf = ({ tune, performance }: Study): ReadonlySet<number> =>
  new Set(
    performance.bars.flatMap(({ bar }, i) => {
      const next = performance.bars[i + 1];
      return next && next.bar <= bar && at(tune.bars, bar).closesRepeat > 1 ? [bar] : [];
    }),
  );

/** `1, 2`; empty outside endings. */
const endingOf = (bar: Bar): string => bar.endings.join(', ');

function leftBarline(tune: Tune, b: number, returns: ReadonlySet<number>): XmlElement | null {
  const bar = at(tune.bars, b);
  const ending = endingOf(bar);
  const opens = ending !== '' && !continues(tune.bars[b - 1], bar);
  const repeats = returns.has(b);
  if (!opens && !repeats) return null;
  return element(
    'barline',
    [
      repeats ? element('bar-style', 'heavy-light') : null,
      opens ? element('ending', '', { number: ending, type: 'start' }) : null,
      repeats ? element('repeat', '', { direction: 'forward' }) : null,
    ],
    { location: 'left' },
  );
}

/** Whether two neighbouring bars are in one ending. */
const continues = (before: Bar | undefined, bar: Bar | undefined): boolean =>
  before !== undefined &&
  bar !== undefined &&
  before.endings.length > 0 &&
  before.part === bar.part &&
  endingOf(before) === endingOf(bar) &&
  before.closesRepeat === 1;

function rightBarline(tune: Tune, b: number, repeats: boolean): XmlElement | null {
  const [bar, next] = [at(tune.bars, b), tune.bars[b + 1]];
  const ending = endingOf(bar);
  const closes = ending !== '' && !continues(bar, next);
  const style =
    bar.closesRepeat > 1 || !next ? 'light-heavy' : bar.closesPart ? 'light-light' : null;
  if (style === null && !closes) return null;
  return element(
    'barline',
    [
      style === null ? null : element('bar-style', style),
      closes
        ? element('ending', '', { number: ending, type: repeats ? 'stop' : 'discontinue' })
        : null,
      repeats
        ? element('repeat', '', {
            direction: 'backward',
            ...(bar.closesRepeat > 2 ? { times: bar.closesRepeat } : {}),
          })
        : null,
    ],
    { location: 'right' },
  );
}

function attributesOf({ study, divisions }: Scope, b: number): XmlElement | null {
  const { bars } = study.tune;
  const [bar, before] = [at(bars, b), bars[b - 1]];
  const key = before && sameKey(bar.key, before.key) ? null : keyElement(bar.key);
  const time = before && sameMeter(bar.meter, before.meter) ? null : timeElement(bar.meter);
  if (before) return key || time ? element('attributes', [key, time]) : null;
  const clef = element('clef', [element('sign', 'G'), element('line', 2)]);
  return element('attributes', [element('divisions', divisions), key, time, clef]);
}

/** The part's letter at its first bar; at the tune's first bar also tempo, tuning and order of parts. */
function directionsOf({ study, tempo }: Scope, b: number): readonly (XmlElement | null)[] {
  const { tune, tuning } = study;
  const part = at(tune.parts, at(tune.bars, b).part);
  const rehearsal =
    part.bars[0] === b && tune.parts.length > 1 ? direction(element('rehearsal', part.name)) : null;
  if (b > 0) return [rehearsal];
  const order = tune.order?.map(i => at(tune.parts, i).name).join(' ');
  return [
    tempoElement(tempo),
    tuningElement(tuning),
    rehearsal,
    order === undefined ? null : direction(element('words', order)),
  ];
}

const direction = (content: XmlElement): XmlElement =>
  element('direction', [element('direction-type', [content])], { placement: 'above' });

/** The tempo by its own beat; in crotchets where the beat is not one note value, such as 5/8. */
function tempoElement({ beat, bpm }: Tempo): XmlElement {
  const { pieces, ratio } = writeLength(beat, null);
  const value = ratio === null && pieces.length === 1 ? at(pieces, 0).value : null;
  const crotchets = Math.round(toNumber(beat) * 4 * bpm * 100) / 100;
  const metronome = element('metronome', [
    element('beat-unit', value?.type ?? 'quarter'),
    ...Array.from({ length: value?.dots ?? 0 }, () => element('beat-unit-dot')),
    element('per-minute', value ? bpm : crotchets),
  ]);
  return element(
    'direction',
    [
      element('direction-type', [metronome]),
      // Crotchets a minute, whatever the beat.
      element('sound', '', { tempo: crotchets }),
    ],
    { placement: 'above' },
  );
}

function eventsOf(scope: Scope, bar: Bar): readonly XmlElement[] {
  const { tune, fingering } = scope.study;
  const accidentalOf = accidentalsInBar(bar.key);
  const elements: XmlElement[] = [];
  for (let index = bar.first; index < bar.end; index++) {
    const [event, written] = [at(tune.events, index), at(scope.lengths, index)];
    const joins = scope.joins.get(index) ?? noJoins;
    const isNote = event.kind === 'note';
    const graceAccidentals = isNote ? event.graces.map(p => accidentalOf(p, false)) : [];
    const accidentals = isNote ? event.pitches.map(p => accidentalOf(p, joins.tieStop)) : [];
    if (isNote && event.chord !== null) elements.push(chordElement(event.chord));
    const signs = writtenSigns(tune, index);
    elements.push(...signs.words.map(wordsElement));
    const notes = noteElements(event, {
      index,
      written,
      division: scope.division,
      tuplet: scope.tuplets.get(index) ?? null,
      joins,
      beams: scope.beams.get(index) ?? [],
      fermata: signs.fermata,
      stroke: scope.strokes.get(index) ?? null,
      stops: at(fingering, index),
      accidentals,
      graceAccidentals,
      slashed: tune.source.text.slice(event.start, event.stop).includes('{/'),
      wholeBar: !isNote && bar.end - bar.first === 1 && compare(event.duration, bar.length) === 0,
    });
    elements.push(...notes, ...signs.wordsAfter.map(wordsElement));
  }
  return elements;
}

/** A chord symbol as `harmony`; any other text in its place as words above the staff. */
const chordElement = (symbol: string): XmlElement => harmonyOf(symbol) ?? wordsElement(symbol);

const wordsElement = (words: string): XmlElement => direction(element('words', words));
