import abcjs from 'abcjs';
import { printedStrokes } from '../../shared/notation/printed-strokes.ts';
import type { Study } from '../../shared/study.ts';
import { type Cell, cutCells } from './cut-cells.ts';
import { type DrawnCell, drawCell } from './draw-cell.ts';
import { type LaidLine, layOutLines, step } from './lay-out-lines.ts';
import { layRows } from './lay-rows.ts';
import { measureText } from './measure-text.ts';
import { staffTop } from './note-places.ts';
import type { Score, ScoreCell } from './score.ts';
import { type CellLine, type ParsedTune, splitLines } from './split-lines.ts';
import { writeCell, writePrelude } from './write-cell.ts';
import { makeGlyphCase } from './write-shapes.ts';

export interface EngraveOptions {
  /** Layers to draw; each can be hidden later by its class. All by default. */
  readonly marks?: boolean;
  readonly fingers?: boolean;
  readonly letters?: boolean;
  /** Spoken alternative of a cell. */
  readonly describe?: (cell: { readonly name: string; readonly bars: readonly number[] }) => string;
}

/**
 * Draws a tune, a phrase at a time.
 *
 * abcjs lays out and draws notes, beams, slurs, bar lines and signs, one line a cell, on a surface
 * of ours (`drawing-surface.ts`). Rows of our own stand round them, in this order from the notes
 * outwards: fingers, stroke signs, chord symbols, endings with the letters of part and phrase; below
 * the staff the notes' letters. All cells of a tune have the same width, height and staff lines.
 *
 * Layers have classes, so that a page shows or hides them without drawing again: `layer-marks`
 * with `mark-all`, `mark-change` and `mark-anchor`, `layer-fingers`, `layer-letters`,
 * `layer-labels`. Each note's group carries `data-note`, each bar's `data-bar`.
 */
export function engraveTune(study: Study, options: EngraveOptions = {}): Score {
  const { tune, map } = study;
  const cells = cutCells(tune, map.phrases);
  const parsed = parseFor(study);
  const cellLines = splitLines(parsed, tune, cells);
  const preludes = preludeLines(cellLines);
  const laid = layOutLines(
    parsed,
    [...preludes.lines, ...cellLines.map(({ elements }) => ({ elements }))],
    comfortableWidth(study, cells),
    measureText,
  );
  const strokes = printedStrokes(study);
  const show = { fingers: options.fingers ?? true, marks: options.marks ?? true };
  const drawn = cellLines.map((line, i) =>
    drawCell(study, line, laid.lines[preludes.lines.length + i] as LaidLine, strokes, show),
  );
  const rows = layRows(drawn, options.letters ?? true);
  const glyphs = makeGlyphCase();
  const prelude = memoise((p: number) => {
    const line = laid.lines[p] as LaidLine;
    const width = line.group.w + 2;
    const root = line.draw().root;
    return { svg: writePrelude(root, width, rows, glyphs), width: rounded(width) };
  });
  const scoreCells = cells.map((cell, i): ScoreCell => {
    const { svg, width: preludeWidth } = prelude(preludes.of[i] ?? 0);
    const body = drawn[i] as DrawnCell;
    const width = laid.width;
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
    };
  });
  return {
    symbols: [...glyphs.symbols.values()].join(''),
    glyphs: glyphs.symbols,
    cells: scoreCells,
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

/** Clef, key and metre of each cell, each kind once: the lines, and the line of each cell. */
function preludeLines(cellLines: readonly CellLine[]): {
  readonly lines: readonly {
    elements: readonly [];
    clef: object;
    key: object;
    meter: object | null;
  }[];
  readonly of: readonly number[];
} {
  const seen = new Map<string, number>();
  const lines: { elements: readonly []; clef: object; key: object; meter: object | null }[] = [];
  const of = cellLines.map(({ clef, key, meter }) => {
    const kind = JSON.stringify([key, meter]);
    const known = seen.get(kind);
    if (known !== undefined) return known;
    seen.set(kind, lines.length);
    lines.push({ elements: [], clef: { ...clef }, key: { ...key }, meter: meter && { ...meter } });
    return lines.length - 1;
  });
  return { lines, of };
}

/** Drawing units that the fullest cell needs to be read easily. */
function comfortableWidth({ tune }: Study, cells: readonly Cell[]): number {
  const counts = cells.map(c =>
    c.bars.reduce((n, b) => n + (tune.bars[b] ? tune.bars[b].end - tune.bars[b].first : 0), 0),
  );
  const least = cells.length === 1 ? 90 : 250;
  return Math.min(420, Math.max(least, 19 * Math.max(0, ...counts) + 36));
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
