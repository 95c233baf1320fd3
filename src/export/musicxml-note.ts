import type { Stop } from '../../shared/fingering/fingering.ts';
import { type Fraction, fraction } from '../../shared/music/fraction.ts';
import type { Pitch } from '../../shared/music/pitch.ts';
import type { Direction, NoteEvent, TuneEvent } from '../../shared/music/tune.ts';
import type { Joins } from './joins.ts';
import { countOf, type NoteValue, type Ratio, writeLength } from './note-values.ts';
import type { Tuplet } from './tuplets.ts';
import { element, type XmlElement } from './xml.ts';

/** What is known of one written note or rest besides its event. */
export interface EventContext {
  readonly index: number;
  /** The length of one division, in whole notes. */
  readonly division: Fraction;
  readonly tuplet: Tuplet | null;
  readonly joins: Joins;
  /** The stroke sign over it; null for none. */
  readonly stroke: Direction | null;
  readonly stops: readonly (Stop | null)[];
  /** The accidental drawn before each pitch; null for none. */
  readonly accidentals: readonly (string | null)[];
  readonly graceAccidentals: readonly (string | null)[];
  /** Its grace notes are written with a stroke through them. */
  readonly slashed: boolean;
  /** It is a rest as long as its bar. */
  readonly wholeBar: boolean;
}

/** One written value of an event: most have one, five quavers have two, tied. */
interface Piece {
  readonly value: NoteValue | null;
  /** In divisions. */
  readonly duration: number;
  readonly first: boolean;
  readonly last: boolean;
}

/** A written note or rest as MusicXML's `note`s: grace notes, then its pitches, value by value. */
export function noteElements(event: TuneEvent, context: EventContext): readonly XmlElement[] {
  const { ratio, pieces } = piecesOf(event.duration, context);
  if (event.kind === 'rest') return pieces.map(piece => restElement(piece, ratio, context));
  const sounded = pieces.flatMap(piece =>
    event.pitches.map((pitch, i) => pitchElement(event, pitch, i, piece, ratio, context)),
  );
  return [...graceElements(event, context), ...sounded];
}

function piecesOf(
  sounded: Fraction,
  { tuplet, division }: EventContext,
): { readonly ratio: Ratio | null; readonly pieces: readonly Piece[] } {
  const { ratio, pieces } = writeLength(sounded, tuplet);
  const last = pieces.length - 1;
  return {
    ratio,
    pieces: pieces.map(({ value, sounds }, i) => ({
      value,
      duration: countOf(sounds, division),
      first: i === 0,
      last: i === last,
    })),
  };
}

function restElement(
  { value, duration, first, last }: Piece,
  ratio: Ratio | null,
  context: EventContext,
): XmlElement {
  const bracket = tupletElements(context, first, last);
  return element('note', [
    element('rest', [], context.wholeBar ? { measure: 'yes' } : {}),
    element('duration', duration),
    element('voice', 1),
    ...valueElements(value, null, ratio),
    bracket.length > 0 ? element('notations', bracket) : null,
  ]);
}

function pitchElement(
  event: NoteEvent,
  pitch: Pitch,
  chordIndex: number,
  piece: Piece,
  ratio: Ratio | null,
  context: EventContext,
): XmlElement {
  const { joins } = context;
  const tieStop = !piece.first || joins.tieStop;
  const tieStart = !piece.last || joins.tieStart;
  const lead = chordIndex === 0;
  const notations = [
    tieStop ? element('tied', [], { type: 'stop' }) : null,
    tieStart ? element('tied', [], { type: 'start' }) : null,
    ...(lead ? slurElements(joins, piece) : []),
    ...(lead ? tupletElements(context, piece.first, piece.last) : []),
    ...(piece.first ? signElements(event, chordIndex, context) : []),
    piece.last && lead && event.breath
      ? element('articulations', [element('breath-mark', '')])
      : null,
  ].filter(e => e !== null);
  return element('note', [
    lead ? null : element('chord'),
    pitchOf(pitch),
    element('duration', piece.duration),
    tieStop ? element('tie', [], { type: 'stop' }) : null,
    tieStart ? element('tie', [], { type: 'start' }) : null,
    element('voice', 1),
    ...valueElements(
      piece.value,
      piece.first ? (context.accidentals[chordIndex] ?? null) : null,
      ratio,
    ),
    notations.length > 0 ? element('notations', notations) : null,
    piece.first && lead && event.lyric !== null
      ? element('lyric', [element('text', event.lyric)], { number: 1 })
      : null,
  ]);
}

/** Type, dots, accidental and ratio, in the order that MusicXML asks for. */
function valueElements(
  value: NoteValue | null,
  accidental: string | null,
  ratio: Ratio | null,
): readonly (XmlElement | null)[] {
  return [
    value ? element('type', value.type) : null,
    ...Array.from({ length: value?.dots ?? 0 }, () => element('dot')),
    accidental === null ? null : element('accidental', accidental),
    ratio && value
      ? element('time-modification', [
          element('actual-notes', ratio.p),
          element('normal-notes', ratio.q),
        ])
      : null,
  ];
}

const slurElements = (joins: Joins, { first, last }: Piece): readonly XmlElement[] => [
  ...(last ? joins.slurStops.map(number => element('slur', [], { type: 'stop', number })) : []),
  ...(first ? joins.slurStarts.map(number => element('slur', [], { type: 'start', number })) : []),
];

function tupletElements(
  { index, tuplet }: EventContext,
  first: boolean,
  last: boolean,
): readonly XmlElement[] {
  if (tuplet === null || tuplet.first === tuplet.last) return [];
  const starts = index === tuplet.first && first;
  const stops = index === tuplet.last && last;
  if (!starts && !stops) return [];
  return [element('tuplet', [], { type: starts ? 'start' : 'stop', number: 1 })];
}

/**
 * Ornaments, stroke, finger, string and staccato. A roll is written as a turn, the nearest sign
 * that MusicXML has, and how rolls are often printed (common practice).
 */
function signElements(
  event: NoteEvent,
  chordIndex: number,
  context: EventContext,
): readonly XmlElement[] {
  const lead = chordIndex === 0;
  const stop = context.stops[chordIndex] ?? null;
  const technical = [
    lead && context.stroke !== null
      ? element(context.stroke === 'down' ? 'down-bow' : 'up-bow')
      : null,
    stop ? element('fingering', stop.finger) : null,
    stop ? element('string', stop.string) : null,
  ].filter(e => e !== null);
  const ornament = { roll: 'turn', trill: 'trill-mark', mordent: 'mordent', turn: 'turn' } as const;
  return [
    lead && event.ornament !== null
      ? element('ornaments', [element(ornament[event.ornament])])
      : null,
    technical.length > 0 ? element('technical', technical) : null,
    lead && event.staccato ? element('articulations', [element('staccato')]) : null,
  ].filter(e => e !== null);
}

function graceElements(event: NoteEvent, context: EventContext): readonly XmlElement[] {
  const type = event.graces.length > 1 ? '16th' : 'eighth';
  return event.graces.map((pitch, i) =>
    element('note', [
      element('grace', [], context.slashed ? { slash: 'yes' } : {}),
      pitchOf(pitch),
      element('voice', 1),
      ...valueElements(
        { type, dots: 0, length: fraction(0) },
        context.graceAccidentals[i] ?? null,
        null,
      ),
    ]),
  );
}

const pitchOf = ({ letter, alter, octave }: Pitch): XmlElement =>
  element('pitch', [
    element('step', letter),
    alter === 0 ? null : element('alter', alter),
    element('octave', octave),
  ]);
