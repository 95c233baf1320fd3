import abcjs from 'abcjs';
import { printedStrokes } from '../../shared/notation/printed-strokes.ts';
import type { Study } from '../../shared/study.ts';
import { cellWidths } from './cell-widths.ts';
import { cutCells } from './cut-cells.ts';
import { inDocument } from './document-paper.ts';
import { type DrawnCell, drawCell } from './draw-cell.ts';
import { isLackingCall, type MakePaper, plainPaper } from './drawing-surface.ts';
import { type LaidLine, type LineRequest, layOutLines, step } from './lay-out-lines.ts';
import { layRows } from './lay-rows.ts';
import { measureText } from './measure-text.ts';
import { staffTop } from './note-places.ts';
import { noteRoom } from './note-room.ts';
import { fingerRow } from './place-above.ts';
import type { Score, ScoreCell } from './score.ts';
import { type CellLine, type ParsedTune, splitLines } from './split-lines.ts';
import { writeCell, writePrelude } from './write-cell.ts';
import { makeGlyphCase } from './write-shapes.ts';

export interface EngraveOptions {
  /** Layers to draw; each can be hidden later by its class. All by default. */
  readonly marks?: boolean;
  readonly fingers?: boolean;
  readonly letters?: boolean;
  /** Width asked of a full cell, in drawing units; where the notes need more, they get it. */
  readonly cellWidth?: number;
  /** Spoken alternative of a cell. */
  readonly describe?: (cell: { readonly name: string; readonly bars: readonly number[] }) => string;
}

/**
 * Draws a tune, a phrase at a time; in a document by jsdom where our own surface lacks a call.
 *
 * abcjs lays out and draws notes, beams, slurs, bar lines and signs, one line a cell, on a surface
 * of ours (`drawing-surface.ts`). Rows of our own stand round them, in this order from the notes
 * outwards: fingers, stroke signs, chord symbols, endings with the letters of part and phrase; below
 * the staff the notes' letters. All cells of a tune have
 * the same height and staff lines, and full ones the same width.
 *
 * Layers have classes, so that a page shows or hides them without drawing again: `layer-marks`
 * with `mark-all`, `mark-change` and `mark-anchor`, `layer-fingers`, `layer-letters`,
 * `layer-labels`. Notes carry `data-n` and bars `data-bar`: see `score.ts`.
 */
export function engraveTune(study: Study, options: EngraveOptions = {}): Score {
  try {
    return engraveOn(plainPaper, study, options);
  } catch (error) {
    if (!isLackingCall(error)) throw error;
    return inDocument(makePaper => engraveOn(makePaper, study, options));
  }
}

/** Draws a tune on papers of a kind; all kinds give the same score. */
export function engraveOn(makePaper: MakePaper, study: Study, options: EngraveOptions): Score {
  const { tune, map } = study;
  const cells = cutCells(tune, map.phrases);
  const parsed = parseFor(study);
  const cellLines = splitLines(parsed, tune, cells);
  const preludes = preludeLines(cellLines);
  const widths = cellWidths(tune, cells, options.cellWidth);
  const laid = layOutLines(
    parsed,
    [
      ...preludes.lines,
      ...cellLines.map((line, i) => ({
        elements: line.elements,
        width: widths[i] ?? 0,
        room: noteRoom(study, line),
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
  const rows = layRows(drawn, options.letters ?? true);
  const glyphs = makeGlyphCase();
  const prelude = memoise((p: number) => {
    const line = laid[p] as LaidLine;
    const width = line.group.w + 2;
    const root = line.draw().root;
    return { svg: writePrelude(root, width, rows, glyphs), width: rounded(width) };
  });
  const scoreCells = cells.map((cell, i): ScoreCell => {
    const { svg, width: preludeWidth } = prelude(preludes.of[i] ?? 0);
    const body = drawn[i] as DrawnCell;
    const width = Math.ceil((laidCells[i] as LaidLine).width);
    return {
      name: cell.name,
      bars: cell.bars,
      phrase: cell.phrase,
      part: cell.part,
      opensPart: cell.opensPart,
      label: cell.opensPhrase ? (map.phrases[cell.phrase]?.label ?? null) : null,
      prelude: svg,
      preludeWidth,
      svg: writeCell(study, cell, body, { width, rows, glyphs, options }),
      width: rounded(width),
      height: rows.height,
      staffSpace: 2 * step,
      staffTop: rounded(staffTop + rows.dy),
      lettersHeight: rows.letters === null ? 0 : rows.height - Math.ceil(rows.notesBottom + 2),
      notes: body.notes.map(({ event, left, right }) => ({
        event,
        left: rounded(left),
        right: rounded(right),
      })),
    };
  });
  return {
    symbols: [...glyphs.glyphs.values()].join(''),
    glyphs: glyphs.glyphs,
    cells: scoreCells,
    fingerRow: rounded(fingerRow),
  };
}

/** The parse of the fence's text that holds this tune's notes. */
function parseFor({ tune }: Study): ParsedTune {
  const parses = abcjs.parseOnly(tune.source.text) as unknown as readonly ParsedTune[];
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

const rounded = (x: number): number => Math.round(x * 10) / 10;

function memoise<V>(make: (key: number) => V): (key: number) => V {
  const made = new Map<number, V>();
  return key => {
    const known = made.get(key);
    if (known !== undefined) return known;
    const value = make(key);
    made.set(key, value);
    return value;
  };
}
