import abcjs from 'abcjs';
import { type PrintedStroke, printedStrokes } from '../../shared/notation/printed-strokes.ts';
import type { Study } from '../../shared/study.ts';
import { type Cell, cutCells } from './cut-cells.ts';
import {
  type Above,
  drawFingers,
  drawLetters,
  drawMarks,
  letterSize,
  placeAbove,
} from './draw-marks.ts';
import type { Shape } from './drawing-surface.ts';
import type { AbsoluteElement } from './laid-line.ts';
import { type LaidLine, layOutLines, step } from './lay-out-lines.ts';
import { measureText } from './measure-text.ts';
import {
  type Box,
  boxesOf,
  eventOf,
  type NotePlace,
  placeNotes,
  staffBottom,
  staffTop,
} from './note-places.ts';
import type { Score, ScoreCell } from './score.ts';
import { type CellLine, type ParsedTune, splitLines } from './split-lines.ts';
import { short, shortPath } from './write-path.ts';
import {
  escapeAttribute,
  escapeText,
  type GlyphCase,
  makeGlyphCase,
  writeShapes,
} from './write-shapes.ts';

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
 * outwards: fingers, stroke signs, chord symbols, endings, the letters of part and phrase; below
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
  const writePrelude = memoise((p: number) => {
    const line = laid.lines[p] as LaidLine;
    const width = line.group.w + 2;
    const root = line.draw().root;
    return { svg: preludeSvg(root, width, rows, glyphs), width: rounded(width) };
  });
  const scoreCells = cells.map((cell, i): ScoreCell => {
    const prelude = writePrelude(preludes.of[i] ?? 0);
    const body = drawn[i] as DrawnCell;
    const width = laid.width;
    return {
      name: cell.name,
      bars: cell.bars,
      phrase: cell.phrase,
      part: cell.part,
      opensPart: cell.opensPart,
      label: cell.opensPhrase ? (map.phrases[cell.phrase]?.label ?? null) : null,
      prelude: prelude.svg,
      preludeWidth: prelude.width,
      svg: cellSvg(study, cell, body, { width, rows, glyphs, options }),
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

/** The cells that hold any of these bars (indices), in order: for an excerpt. */
export const cellsOf = (score: Score, bars: readonly number[]): readonly ScoreCell[] =>
  score.cells.filter(cell => cell.bars.some(b => bars.includes(b)));

/** One cell as a file or picture of its own, with the glyphs that it uses. */
export function standAlone(score: Score, svg: string): string {
  const used = new Set([...svg.matchAll(/href="#([^"]+)"/g)].map(m => m[1] ?? ''));
  const symbols = [...used].map(id => score.glyphs.get(id) ?? '').join('');
  return svg
    .replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" ')
    .replace('>', `><defs>${symbols}</defs>`);
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
  return Math.min(420, Math.max(250, 19 * Math.max(0, ...counts) + 36));
}

interface DrawnCell {
  readonly line: CellLine;
  readonly laid: LaidLine;
  readonly root: Shape;
  readonly shapeOf: ReadonlyMap<AbsoluteElement, Shape>;
  readonly notes: readonly NotePlace[];
  readonly boxes: readonly Box[];
  readonly above: Above;
}

function drawCell(
  study: Study,
  line: CellLine,
  laid: LaidLine,
  strokes: ReadonlyMap<number, PrintedStroke>,
  show: { readonly fingers: boolean; readonly marks: boolean },
): DrawnCell {
  const { root, shapeOf } = laid.draw();
  const notes = placeNotes(laid.group, line.events);
  const boxes = boxesOf(laid.group, root);
  const above = placeAbove(study, notes, boxes, strokes, show);
  return { line, laid, root, shapeOf, notes, boxes, above };
}

/** Heights of the rows that all cells share, from the top of the drawing. */
interface Rows {
  /** Added to every y of abcjs's. */
  readonly dy: number;
  /** Highest point of notes and signs. */
  readonly notesTop: number;
  readonly notesBottom: number;
  readonly chords: number;
  readonly endings: number;
  readonly labels: number;
  readonly letters: number | null;
  readonly height: number;
}

function layRows(cells: readonly DrawnCell[], letters: boolean): Rows {
  const all = cells.flatMap(c => c.boxes);
  const notesTop = Math.min(...cells.map(c => c.above.top), ...all.map(b => b.top)) - 2;
  const notesBottom = Math.max(staffBottom, ...all.map(b => b.bottom)) + 2;
  const chordRow = cells.some(c => find(c.root, 'chord') || find(c.root, 'annotation')) ? 13 : 0;
  const endingRow = cells.some(c => find(c.root, 'ending')) ? 15 : 0;
  const labelRow = 15;
  const dy = labelRow + endingRow + chordRow - notesTop;
  const bottom = notesBottom + dy;
  return {
    dy,
    notesTop: notesTop + dy,
    notesBottom: bottom,
    labels: 12,
    endings: labelRow,
    chords: labelRow + endingRow + 11,
    letters: letters ? bottom + letterSize : null,
    height: Math.ceil(bottom + (letters ? letterSize + 5 : 2)),
  };
}

const find = (shape: Shape, name: string): boolean =>
  shape.attributes['data-name'] === name || shape.children.some(s => find(s, name));

function preludeSvg(root: Shape, width: number, rows: Rows, glyphs: GlyphCase): string {
  const body =
    staffLines(width, rows.dy) + writeShapes(root.children.slice(1), { dy: rows.dy, glyphs });
  return `<svg class="prelude" width="${short(width)}" height="${rows.height}" viewBox="0 0 ${short(width)} ${rows.height}" fill="currentColor" aria-hidden="true">${body}</svg>`;
}

function cellSvg(
  study: Study,
  cell: Cell,
  drawn: DrawnCell,
  page: {
    readonly width: number;
    readonly rows: Rows;
    readonly glyphs: GlyphCase;
    readonly options: EngraveOptions;
  },
): string {
  const { rows, glyphs, options } = page;
  const staffWidth = drawn.laid.group.w;
  const body = [
    drawAnchors(study, drawn, rows, staffWidth),
    staffLines(staffWidth, rows.dy),
    drawNotes(study, drawn, rows, glyphs),
    drawFingers(drawn.above.fingers, rows.dy),
    drawMarks(drawn.above.marks, rows.dy),
    rows.letters === null ? '' : drawLetters(study, drawn.notes, rows.letters),
    drawLabels(study, cell, rows),
  ];
  const label = options.describe?.({ name: cell.name, bars: cell.bars }) ?? cell.name;
  return `<svg class="cell" width="${short(page.width)}" height="${rows.height}" viewBox="0 0 ${short(page.width)} ${rows.height}" role="img" aria-label="${escapeAttribute(label)}" fill="currentColor">${body.join('')}</svg>`;
}

function staffLines(width: number, dy: number): string {
  const y = Math.round((staffTop + dy) * 100) / 100;
  const lines = [0, 1, 2, 3, 4].map(i => `M0 ${y + i * 2 * step}H${short(width)}`).join('');
  return `<path class="staff" fill="none" stroke="currentColor" stroke-width=".7" d="${lines}"/>`;
}

/** Bars with their notes, then what joins notes: beams, slurs, triplets, endings. */
function drawNotes(study: Study, drawn: DrawnCell, rows: Rows, glyphs: GlyphCase): string {
  const { tune } = study;
  const pen = { dy: rows.dy, glyphs };
  const chords: Shape[] = [];
  let [out, bar] = ['', -1];
  for (const element of drawn.laid.group.voices[0]?.children ?? []) {
    const shape = drawn.shapeOf.get(element);
    if (!shape || element.type === 'part') continue;
    chords.push(...shape.children.filter(isAbove));
    const index = eventOf(drawn.line.events, element);
    const event = tune.events[index];
    if (event && event.bar !== bar) {
      out += `${bar < 0 ? '' : '</g>'}<g data-bar="${escapeAttribute(tune.bars[event.bar]?.name ?? '')}">`;
      bar = event.bar;
    }
    const shapes = writeShapes(
      shape.children.filter(s => !isAbove(s)),
      pen,
    );
    if (event?.kind !== 'note') out += shapes;
    else {
      const anchored = study.bowing.anchors.some(a => a.first <= index && index <= a.last);
      const klass = anchored ? ' class="in-anchor"' : '';
      out += `<g data-note="${escapeAttribute(event.id)}"${klass}>${shapes}</g>`;
    }
  }
  if (bar >= 0) out += '</g>';
  const groups = new Set(drawn.shapeOf.values());
  const others = drawn.root.children.slice(1).filter(s => !groups.has(s));
  const endings = others.filter(s => s.attributes['data-name'] === 'ending');
  const joins = others.filter(s => s.attributes['data-name'] !== 'ending');
  return (
    out +
    writeShapes(joins, pen) +
    drawChords(chords, rows) +
    endings.map(s => drawEnding(s, rows)).join('')
  );
}

/** Chord symbols and words above the staff have a row of their own. */
const isAbove = (shape: Shape): boolean =>
  /^(chord|annotation)$/.test(shape.attributes['data-name'] ?? '') &&
  Number(shape.attributes.y) < staffTop;

function drawChords(chords: readonly Shape[], rows: Rows): string {
  const texts = chords.map(
    c =>
      `<text x="${short(Number(c.attributes.x))}" y="${rows.chords}">${escapeText(c.text)}</text>`,
  );
  return texts.length === 0
    ? ''
    : `<g class="chord" font-size="14" text-anchor="middle">${texts.join('')}</g>`;
}

/** An ending's bracket in the row of endings, with its number. */
function drawEnding(shape: Shape, rows: Rows): string {
  const line = shape.children.find(s => s.tag === 'path')?.attributes.path ?? '';
  const text = shape.children.find(s => s.tag === 'text');
  const y = Math.min(...[...line.matchAll(/[ML] \S+ (\S+)/g)].map(m => Number(m[1])));
  const moved = line.replace(
    /([ML]) (\S+) (\S+)/g,
    (_, c: string, x: string, at: string) =>
      `${c} ${x} ${Number(at) > y ? rows.endings + 12 : rows.endings}`,
  );
  const number = text
    ? `<text class="ending" x="${short(Number(text.attributes.x))}" y="${short(rows.endings + 11)}" font-size="11">${escapeText(text.text)}</text>`
    : '';
  return `<path fill="none" stroke="currentColor" stroke-width=".9" d="${shortPath(moved)}"/>${number}`;
}

/** The part's letter in a box and the phrase's letter beside it, at the cell's start. */
function drawLabels({ tune, map }: Study, cell: Cell, rows: Rows): string {
  const part = cell.opensPart ? escapeText(tune.parts[cell.part]?.name ?? '') : '';
  const phrase = cell.opensPhrase ? escapeText(map.phrases[cell.phrase]?.label ?? '') : '';
  const partText =
    part &&
    `<text class="part" x="1" y="${rows.labels}" font-size="15" font-weight="700">${part}</text>`;
  const x = part ? 8 + 11 * part.length : 1;
  const phraseText =
    phrase && `<text class="phrase" x="${x}" y="${rows.labels}" font-size="12">${phrase}</text>`;
  return partText || phraseText ? `<g class="layer-labels">${partText}${phraseText}</g>` : '';
}

/** A tint behind an anchor, and a bracket round it, open at an edge that it runs over. */
function drawAnchors(study: Study, drawn: DrawnCell, rows: Rows, width: number): string {
  const top = rows.notesTop;
  const bottom = rows.notesBottom;
  return study.bowing.anchors
    .map(anchor => {
      const inside = drawn.notes.filter(n => anchor.first <= n.event && n.event <= anchor.last);
      const [first, last] = [inside[0], inside[inside.length - 1]];
      if (!first || !last) return '';
      const opens = first.event === firstNoteFrom(study, anchor.first);
      const closes = last.event === lastNoteTo(study, anchor.last);
      const left = opens ? first.left - 5 : 0;
      const right = closes ? last.right + 5 : width;
      const [l, r, t, b] = [short(left), short(right), short(top), short(bottom)];
      const edge = `M${l} ${t}H${r}M${l} ${b}H${r}${opens ? `M${l} ${t}V${b}` : ''}${closes ? `M${r} ${t}V${b}` : ''}`;
      return (
        `<rect class="anchor-band" x="${l}" y="${t}" width="${short(right - left)}" height="${short(bottom - top)}" fill-opacity=".09"/>` +
        `<path class="anchor-edge" fill="none" stroke="currentColor" stroke-width="1.3" d="${edge}"/>`
      );
    })
    .join('');
}

function firstNoteFrom({ tune }: Study, event: number): number {
  return tune.events.findIndex((e, i) => i >= event && e.kind === 'note');
}

function lastNoteTo({ tune }: Study, event: number): number {
  return tune.events.findLastIndex((e, i) => i <= event && e.kind === 'note');
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
