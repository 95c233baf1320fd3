import type { Stop } from '../../shared/fingering/fingering.ts';
import { type Fraction, zero } from '../../shared/music/fraction.ts';
import {
  countOf,
  type NoteValue,
  type Ratio,
  type WrittenLength,
} from '../../shared/music/note-values.ts';
import type { Pitch } from '../../shared/music/pitch.ts';
import type { Direction, NoteEvent, TuneEvent } from '../../shared/music/tune.ts';
import type { Tuplet } from '../../shared/music/tuplets.ts';
import { at } from '../../shared/must.ts';
import type { Beam } from './beams.ts';
import type { Joins } from './joins.ts';
import {
  bows,
  breath,
  chord,
  dot,
  fermata,
  ornaments,
  staccato,
  tie,
  tied,
  tuplets,
  voice,
} from './musicxml-signs.ts';
import { element, filled, type XmlElement, type XmlParts } from './xml.ts';

/** Facts of one written note or rest besides its event. */
export interface EventContext {
  readonly index: number;
  /** The note values that its length is written with. */
  readonly written: WrittenLength;
  /** The length of one division, in whole notes. */
  readonly division: Fraction;
  readonly tuplet: Tuplet | null;
  readonly joins: Joins;
  /** Its beams, the outermost first. */
  readonly beams: readonly Beam[];
  readonly fermata: boolean;
  /** The stroke printed over it; null for none. */
  readonly stroke: Direction | null;
  readonly stops: readonly (Stop | null)[];
  /** The accidental printed before each pitch; null for none. */
  readonly accidentals: readonly (string | null)[];
  readonly graceAccidentals: readonly (string | null)[];
  /** Its grace notes are slashed. */
  readonly slashed: boolean;
  /** It is a rest as long as its bar. */
  readonly wholeBar: boolean;
}

/** One note value of an event. Most events have one; five quavers have two, tied. */
interface Piece {
  readonly value: NoteValue | null;
  /** In divisions. */
  readonly duration: number;
  readonly first: boolean;
  readonly last: boolean;
}

/** A note or rest as `note` elements: its grace notes, then its pitches, for each note value in turn. */
export function noteElements(event: TuneEvent, context: EventContext): readonly XmlElement[] {
  const { ratio } = context.written;
  const pieces = piecesOf(context);
  if (event.kind === 'rest') return pieces.map(piece => restElement(piece, ratio, context));
  const sounded = pieces.flatMap(piece =>
    event.pitches.map((pitch, i) => pitchElement(event, pitch, i, piece, ratio, context)),
  );
  return event.graces.length === 0 ? sounded : [...graceElements(event, context), ...sounded];
}

const piecesOf = ({ written, division }: EventContext): readonly Piece[] =>
  written.pieces.map(({ value, sounds }, i) => ({
    value,
    duration: countOf(sounds, division),
    first: i === 0,
    last: i === written.pieces.length - 1,
  }));

function restElement(piece: Piece, ratio: Ratio | null, context: EventContext): XmlElement {
  return element('note', [
    element('rest', '', context.wholeBar ? { measure: 'yes' } : {}),
    element('duration', piece.duration),
    voice,
    ...valueElements(piece.value, null, ratio),
    filled('notations', [
      tupletElement(context, piece),
      piece.first && context.fermata ? fermata : null,
    ]),
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
  const { first, last } = piece;
  const tieStop = !first || joins.tieStop;
  const tieStart = !last || joins.tieStart;
  const lead = chordIndex === 0;
  return element('note', [
    lead ? null : chord,
    pitchOf(pitch),
    element('duration', piece.duration),
    tieStop ? tie.stop : null,
    tieStart ? tie.start : null,
    voice,
    ...valueElements(piece.value, first ? at(context.accidentals, chordIndex) : null, ratio),
    ...(lead ? context.beams.map((beam, i) => element('beam', beam, { number: i + 1 })) : []),
    filled('notations', [
      tieStop ? tied.stop : null,
      tieStart ? tied.start : null,
      ...(lead ? slurElements(joins, piece) : []),
      lead ? tupletElement(context, piece) : null,
      first && lead && event.ornament !== null ? ornaments[event.ornament] : null,
      first ? technicalElement(chordIndex, context) : null,
      first && lead && event.staccato ? staccato : null,
      last && lead && event.breath ? breath : null,
      last && lead && context.fermata ? fermata : null,
    ]),
    first && lead && event.lyric !== null
      ? element('lyric', [element('text', event.lyric)], { number: 1 })
      : null,
  ]);
}

/** Type, dots, accidental and ratio, in the order that MusicXML asks for. */
const valueElements = (
  value: NoteValue | null,
  accidental: string | null,
  ratio: Ratio | null,
): XmlParts => [
  value ? element('type', value.type) : null,
  ...Array.from({ length: value?.dots ?? 0 }, () => dot),
  accidental === null ? null : element('accidental', accidental),
  ratio && value
    ? element('time-modification', [
        element('actual-notes', ratio.p),
        element('normal-notes', ratio.q),
      ])
    : null,
];

const slurElements = (joins: Joins, { first, last }: Piece): XmlParts => [
  ...(last ? joins.slurStops.map(number => element('slur', '', { type: 'stop', number })) : []),
  ...(first ? joins.slurStarts.map(number => element('slur', '', { type: 'start', number })) : []),
];

function tupletElement({ index, tuplet }: EventContext, { first, last }: Piece): XmlElement | null {
  if (tuplet === null || tuplet.first === tuplet.last) return null;
  if (first && index === tuplet.first) return tuplets.start;
  return last && index === tuplet.last ? tuplets.stop : null;
}

/** Stroke, finger and string. */
function technicalElement(chordIndex: number, { stroke, stops }: EventContext): XmlElement | null {
  const stop = at(stops, chordIndex);
  return filled('technical', [
    chordIndex === 0 && stroke !== null ? bows[stroke] : null,
    stop ? element('fingering', stop.finger) : null,
    stop ? element('string', stop.string) : null,
  ]);
}

function graceElements(event: NoteEvent, context: EventContext): readonly XmlElement[] {
  const type = event.graces.length > 1 ? '16th' : 'eighth';
  return event.graces.map((pitch, i) =>
    element('note', [
      element('grace', '', context.slashed ? { slash: 'yes' } : {}),
      pitchOf(pitch),
      voice,
      ...valueElements({ type, dots: 0, length: zero }, at(context.graceAccidentals, i), null),
    ]),
  );
}

const pitchOf = ({ letter, alter, octave }: Pitch): XmlElement =>
  element('pitch', [
    element('step', letter),
    alter === 0 ? null : element('alter', alter),
    element('octave', octave),
  ]);
