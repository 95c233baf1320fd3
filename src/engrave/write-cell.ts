import { measureBold, measureText } from '../../shared/engraving/measure-text.ts';
import type { Study } from '../../shared/study.ts';
import { chordLane, chordSize, isAbove, placeChords } from './chord-row.ts';
import type { Cell } from './cut-cells.ts';
import type { DrawnCell } from './draw-cell.ts';
import type { Shape } from './drawing-surface.ts';
import type { AbsoluteElement } from './laid-line.ts';
import { lineWidth, step } from './lay-out-lines.ts';
import type { Rows } from './lay-rows.ts';
import { eventOf, staffTop } from './note-places.ts';
import type { Letters } from './note-room.ts';
import { readBeams, writePlainNote } from './note-symbols.ts';
import { writeAnchors } from './write-anchors.ts';
import { writeLettering } from './write-lettering.ts';
import { writeFingers, writeLetters, writeMarks } from './write-marks.ts';
import { short, shortPath } from './write-path.ts';
import {
  escapeAttribute,
  escapeText,
  type GlyphCase,
  type Pen,
  writeShapes,
} from './write-shapes.ts';

/**
 * What a drawing's outermost element says for all in it: its box, that shapes are filled, and that
 * lines are as thick as a stem. Its size is the page's to give. What is filled and not to be outlined says so.
 */
const drawing = (kind: 'cell' | 'prelude', width: number, height: number, spoken: string): string =>
  `<svg class="${kind}" viewBox="0 0 ${short(width)} ${height}" ${spoken} fill="currentColor" stroke="currentColor" stroke-width="${short(lineWidth)}">`;

/** Clef, key and metre alone, as high as a cell. */
export function writePrelude(root: Shape, width: number, rows: Rows, glyphs: GlyphCase): string {
  const body = staffLines(width, rows.dy) + writeShapes(root.children, { dy: rows.dy, glyphs });
  return `${drawing('prelude', width, rows.height, 'aria-hidden="true"')}${body}</svg>`;
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
    readonly letters: Letters;
  },
): string {
  const { rows, glyphs } = page;
  const pen: Pen = { dy: rows.dy, glyphs };
  // Staves join only if they fill their cells; a part's last bar line ends its staff.
  const staffWidth = cell.closesPart ? drawn.width : page.width;
  const elements = drawn.elements.filter(e => e.type !== 'part');
  const above = elements.flatMap(e => drawn.shapeOf.get(e)?.children.filter(isAbove) ?? []);
  const others = otherShapes(drawn);
  const endings = others.filter(s => s.getAttribute('data-name') === 'ending');
  const text = [
    writeChords(above, rows, glyphs),
    endings.map(s => writeEndingNumber(s, rows)).join(''),
    writeFingers(drawn.above.fingers, rows.dy),
    rows.letters === null ? '' : writeLetters(page.letters, drawn.notes, rows.letters, glyphs),
    writeLabels(study, cell, rows, endingEdge(drawn)),
  ].join('');
  const body = [
    writeAnchors(study, drawn, rows),
    staffLines(staffWidth, rows.dy),
    writeBars(study, drawn, elements, pen),
    writeShapes(
      others.filter(s => !/^(ending|slur)$/.test(s.getAttribute('data-name') ?? '')),
      pen,
    ),
    writeSlurs(others, pen),
    writeLifted(drawn, pen),
    endings.map(s => writeEndingLine(s, rows)).join(''),
    writeMarks(drawn.above.marks, rows.dy),
    text && `<g stroke="none">${text}</g>`,
  ];
  const spoken = `role="img" aria-label="${escapeAttribute(cell.name)}"`;
  return `${drawing('cell', page.width, rows.height, spoken)}${body.join('')}</svg>`;
}

/** Five lines in one path, as wide as the page wants them. */
function staffLines(width: number, dy: number): string {
  const lines = [0, 1, 2, 3, 4].map(line => {
    const y = Math.round((staffTop + dy + 2 * step * line) * 100) / 100;
    return `M0 ${y}H${short(width)}`;
  });
  return `<path class="staff" d="${lines.join('')}"/>`;
}

/** Bars with their notes, then the signs that stand between notes, bar lines among them. */
function writeBars(
  { tune, bowing }: Study,
  drawn: DrawnCell,
  elements: readonly AbsoluteElement[],
  pen: Pen,
): string {
  const signs: Shape[] = [];
  const beams = readBeams(drawn.root.children);
  let [out, bar] = ['', -1];
  for (const element of elements) {
    const index = eventOf(drawn.line.events, element);
    const event = tune.events[index];
    const shapes = drawn.shapeOf.get(element)?.children.filter(s => !isAbove(s)) ?? [];
    if (!event) {
      signs.push(...shapes);
      continue;
    }
    if (event.bar !== bar) {
      out += `${bar < 0 ? '' : '</g>'}<g data-bar="${escapeAttribute(tune.bars[event.bar]?.name ?? '')}">`;
      bar = event.bar;
    }
    const anchored = bowing.anchors.some(a => a.first <= index && index <= a.last);
    const attributes = `data-n="${index}"${anchored ? ' class="in-anchor"' : ''}`;
    if (event.kind !== 'note') out += writeShapes(shapes, pen);
    else {
      out +=
        writePlainNote(shapes, beams, attributes, pen) ??
        `<g ${attributes}>${writeShapes(shapes, pen)}</g>`;
    }
  }
  return `${out}${bar < 0 ? '' : '</g>'}${writeShapes(signs, pen)}`;
}

/** What joins notes: beams, slurs that stay where they are, ties, triplets; and endings. */
function otherShapes({ root, shapeOf, slurs, above }: DrawnCell): readonly Shape[] {
  const groups = new Set(shapeOf.values());
  const lifted = new Set([...above.lifts.keys()].map(i => slurs[i]?.shape));
  return root.children.filter(s => !groups.has(s) && !lifted.has(s));
}

/** Slurs that stay where they are, in a group, so that a page can put others in their place. */
function writeSlurs(others: readonly Shape[], pen: Pen): string {
  const slurs = others.filter(s => s.getAttribute('data-name') === 'slur');
  return slurs.length === 0 ? '' : `<g class="slurs">${writeShapes(slurs, pen)}</g>`;
}

/** Slurs that were moved over fingers; they come down while fingers are hidden. */
function writeLifted({ slurs, above }: DrawnCell, pen: Pen): string {
  const written = [...above.lifts].map(([i, lift]) => {
    const arc = slurs[i];
    return arc ? writeShapes([arc.shape], { ...pen, dy: pen.dy - lift }) : '';
  });
  return written.length === 0 ? '' : `<g class="lifted">${written.join('')}</g>`;
}

function writeChords(chords: readonly Shape[], rows: Rows, glyphs: GlyphCase): string {
  const texts = placeChords(chords).map(({ text, x, lane }) =>
    writeLettering(text, [x, rows.chords - lane * chordLane], chordSize, glyphs),
  );
  return texts.length === 0
    ? ''
    : `<g class="chord" font-size="${chordSize}" text-anchor="middle">${texts.join('')}</g>`;
}

const endingSize = 11;

/** An ending's bracket in the row of endings. */
function writeEndingLine(shape: Shape, rows: Rows): string {
  const line = shape.children.find(s => s.tag === 'path')?.attributes.path ?? '';
  const points = [...line.matchAll(/([ML]) (\S+) (\S+)/g)];
  const top = Math.min(...points.map(m => Number(m[3])));
  const moved = points.map(([, command, x, y]) => {
    const at = Number(y) > top ? rows.endings + 12 : rows.endings;
    return `${command} ${x} ${at}`;
  });
  return `<path fill="none" stroke-width=".9" d="${shortPath(moved.join(''))}"/>`;
}

function writeEndingNumber(shape: Shape, rows: Rows): string {
  const text = shape.children.find(s => s.tag === 'text');
  if (!text) return '';
  const x = short(Number(text.attributes.x));
  return `<text class="ending" x="${x}" y="${short(rows.endings + 11)}" font-size="${endingSize}">${escapeText(text.text)}</text>`;
}

/** Right edge of an ending's number where it stands at the cell's start; else 0. */
function endingEdge({ root }: DrawnCell): number {
  const edges = root.children
    .filter(s => s.getAttribute('data-name') === 'ending')
    .flatMap(s => s.children.filter(c => c.tag === 'text'))
    .map(text => Number(text.attributes.x) + measureText(text.text, endingSize).width);
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
  const x = short(
    part ? start + measureBold(tune.parts[cell.part]?.name ?? '', 15).width + 7 : start,
  );
  const phraseText =
    phrase && `<text class="phrase" x="${x}" y="${rows.labels}" font-size="12">${phrase}</text>`;
  return partText || phraseText ? `<g class="layer-labels">${partText}${phraseText}</g>` : '';
}
