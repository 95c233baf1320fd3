import abcjs from 'abcjs';
import { measureText } from '../../shared/engraving/measure-text.ts';
import { printedStrokes } from '../../shared/notation/printed-strokes.ts';
import type { Study } from '../../shared/study.ts';
import { cellWidths } from './cell-widths.ts';
import { type Cell, cutCells } from './cut-cells.ts';
import { type DrawnCell, drawCell } from './draw-cell.ts';
import type { MakePaper } from './drawing-surface.ts';
import type { EngraveOptions } from './engrave-tune.ts';
import { type LaidLine, type LineRequest, layOutLines } from './lay-out-lines.ts';
import { layRows, type Rows } from './lay-rows.ts';
import { type Letters, lettersOf, noteRoom } from './note-room.ts';
import { type CellLine, type ParsedTune, splitLines } from './split-lines.ts';

/** A tune with everything in its place, drawn as shapes, and nothing written yet. */
export interface LaidTune {
  readonly cells: readonly Cell[];
  /** One a cell. */
  readonly drawn: readonly DrawnCell[];
  /** One a cell, in drawing units. */
  readonly widths: readonly number[];
  readonly rows: Rows;
  /** Clef, key and metre of each cell, each kind once. */
  readonly preludes: readonly LaidLine[];
  /** The prelude of each cell. */
  readonly preludeOf: readonly number[];
  readonly letters: Letters;
}

/** Lays a tune out on papers of a kind. */
export function layTune(makePaper: MakePaper, study: Study, options: EngraveOptions): LaidTune {
  const { tune, map } = study;
  const cells = cutCells(tune, map.phrases);
  const parsed = parseFor(study, options.parse ?? abcjs.parseOnly);
  const cellLines = splitLines(parsed, tune, cells);
  const preludes = preludeLines(cellLines);
  const letters = lettersOf(study, options.noteNames ?? 'letters');
  const room = noteRoom(study, cellLines[0]?.events ?? new Map(), letters);
  const widths = cellWidths(tune, cells, options.cellWidth);
  const laid = layOutLines(
    parsed,
    [
      ...preludes.lines,
      ...cellLines.map((line, i) => ({
        elements: line.elements,
        width: widths[i] ?? 0,
        room,
      })),
    ],
    measureText,
    makePaper,
  );
  const laidCells = laid.slice(preludes.lines.length);
  const strokes = printedStrokes(study);
  const show = { fingers: options.fingers ?? true, marks: options.marks ?? true };
  const drawn = cellLines.map((line, i) =>
    drawCell(study, line, laidCells[i] as LaidLine, strokes, show),
  );
  return {
    cells,
    drawn,
    widths: laidCells.map(line => Math.ceil(line.width)),
    rows: layRows(drawn, options.letters ?? true),
    preludes: laid.slice(0, preludes.lines.length),
    preludeOf: preludes.of,
    letters,
  };
}

/** The parse of the fence's text that holds this tune's notes. */
function parseFor({ tune }: Study, parse: (text: string) => unknown): ParsedTune {
  const parses = parse(tune.source.text) as readonly ParsedTune[];
  const first = tune.events.find(e => e.kind === 'note')?.start ?? 0;
  const found = parses.find(parse =>
    parse.lines.some(line =>
      line.staff?.[0]?.voices[0]?.some(
        e => e.el_type === 'note' && (e.startChar ?? 0) <= first && first < (e.endChar ?? 0),
      ),
    ),
  );
  const parsed = found ?? parses[0];
  if (!parsed) throw new Error(`abcjs cannot read ${tune.title} again`);
  return parsed;
}

/** Room for the longest signature; a line of signs alone is not stretched to it. */
const preludeRoom = 150;

/** Clef, key and metre of each cell, each kind once: the lines, and the line of each cell. */
function preludeLines(cellLines: readonly CellLine[]): {
  readonly lines: readonly LineRequest[];
  readonly of: readonly number[];
} {
  const seen = new Map<string, number>();
  const lines: LineRequest[] = [];
  const of = cellLines.map(({ clef, key, meter }) => {
    const kind = JSON.stringify([key, meter]);
    const known = seen.get(kind);
    if (known !== undefined) return known;
    seen.set(kind, lines.length);
    lines.push({ elements: [], clef, key, meter, width: preludeRoom });
    return lines.length - 1;
  });
  return { lines, of };
}
