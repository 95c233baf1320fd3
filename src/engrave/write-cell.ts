import type { Study } from '../../shared/study.ts';
import type { Cell } from './cut-cells.ts';
import type { DrawnCell } from './draw-cell.ts';
import type { Shape } from './drawing-surface.ts';
import type { EngraveOptions } from './engrave-tune.ts';
import { step } from './lay-out-lines.ts';
import type { Rows } from './lay-rows.ts';
import { eventOf, staffTop } from './note-places.ts';
import { writeAnchors } from './write-anchors.ts';
import { writeFingers, writeLetters, writeMarks } from './write-marks.ts';
import { short, shortPath } from './write-path.ts';
import { escapeAttribute, escapeText, type GlyphCase, writeShapes } from './write-shapes.ts';

/** Clef, key and metre alone, as high as a cell. */
export function writePrelude(root: Shape, width: number, rows: Rows, glyphs: GlyphCase): string {
  const body =
    staffLines(width, rows.dy) + writeShapes(root.children.slice(1), { dy: rows.dy, glyphs });
  return `<svg class="prelude" width="${short(width)}" height="${rows.height}" viewBox="0 0 ${short(width)} ${rows.height}" fill="currentColor" aria-hidden="true">${body}</svg>`;
}

/** A cell as SVG. */
export function writeCell(
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
  // Staves join only if they fill their cells; a part's last bar line ends its staff.
  const staffWidth = cell.closesPart ? drawn.width : page.width;
  const body = [
    writeAnchors(study, drawn, rows),
    staffLines(staffWidth, rows.dy),
    writeNotes(study, drawn, rows, glyphs),
    writeFingers(drawn.above.fingers, rows.dy),
    writeMarks(drawn.above.marks, rows.dy),
    rows.letters === null ? '' : writeLetters(study, drawn.notes, rows.letters),
    writeLabels(study, cell, rows, endingEdge(drawn)),
  ];
  const label = options.describe?.({ name: cell.name, bars: cell.bars }) ?? cell.name;
  return `<svg class="cell" width="${short(page.width)}" height="${rows.height}" viewBox="0 0 ${short(page.width)} ${rows.height}" role="img" aria-label="${escapeAttribute(label)}" fill="currentColor">${body.join('')}</svg>`;
}

/** Five lines in one path, there and back again. */
function staffLines(width: number, dy: number): string {
  const y = Math.round((staffTop + dy) * 100) / 100;
  const [there, back] = [`H${short(width)}`, `m0 ${2 * step}H0`];
  const next = `m0 ${2 * step}${there}`;
  const lines = `M0 ${y}${there}${back}${next}${back}${next}`;
  return `<path class="staff" fill="none" stroke="currentColor" stroke-width=".7" d="${lines}"/>`;
}

/** Bars with their notes, then what joins notes: beams, slurs, triplets, endings. */
function writeNotes(study: Study, drawn: DrawnCell, rows: Rows, glyphs: GlyphCase): string {
  const { tune } = study;
  const pen = { dy: rows.dy, glyphs };
  const chords: Shape[] = [];
  let [out, bar] = ['', -1];
  for (const element of drawn.elements) {
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
    writeChords(chords, rows) +
    endings.map(s => writeEnding(s, rows)).join('')
  );
}

/** Chord symbols and words above the staff have a row of their own. */
const isAbove = (shape: Shape): boolean =>
  /^(chord|annotation)$/.test(shape.attributes['data-name'] ?? '') &&
  Number(shape.attributes.y) < staffTop;

function writeChords(chords: readonly Shape[], rows: Rows): string {
  const texts = chords.map(
    c =>
      `<text x="${short(Number(c.attributes.x))}" y="${rows.chords}">${escapeText(c.text)}</text>`,
  );
  return texts.length === 0
    ? ''
    : `<g class="chord" font-size="14" text-anchor="middle">${texts.join('')}</g>`;
}

/** An ending's bracket in the row of endings, with its number. */
function writeEnding(shape: Shape, rows: Rows): string {
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

/** Right edge of an ending's number where it stands at the cell's start; else 0. */
function endingEdge({ root }: DrawnCell): number {
  const edges = root.children
    .filter(s => s.attributes['data-name'] === 'ending')
    .flatMap(s => s.children.filter(c => c.tag === 'text'))
    .map(text => Number(text.attributes.x) + 7 * text.text.length);
  return Math.max(0, ...edges.filter(x => x < 60));
}

/** The part's letter and the phrase's beside it, at the cell's start, past an ending's number. */
function writeLabels({ tune, map }: Study, cell: Cell, rows: Rows, after: number): string {
  const part = cell.opensPart ? escapeText(tune.parts[cell.part]?.name ?? '') : '';
  const phrase = cell.opensPhrase ? escapeText(map.phrases[cell.phrase]?.label ?? '') : '';
  const start = after === 0 ? 1 : after + 6;
  const partText =
    part &&
    `<text class="part" x="${short(start)}" y="${rows.labels}" font-size="15" font-weight="700">${part}</text>`;
  const x = short(part ? start + 7 + 11 * part.length : start);
  const phraseText =
    phrase && `<text class="phrase" x="${x}" y="${rows.labels}" font-size="12">${phrase}</text>`;
  return partText || phraseText ? `<g class="layer-labels">${partText}${phraseText}</g>` : '';
}
