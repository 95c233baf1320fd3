import { got } from '../../shared/must.ts';
import type { Score, ScoreCell } from '../engrave/score.ts';
import type { Density } from './print-input.ts';
import { type Sizes, unitLength } from './sizes.ts';

/** How notation looks on paper. */
export interface Look {
  readonly sizes: Sizes;
  readonly marks: Density;
  readonly fingers: boolean;
  readonly letters: boolean;
  /** Notes and signs only: no anchors, labels, chord symbols. */
  readonly bare?: true;
}

/** One line of staff as a picture. Lengths in millimetres. */
export interface DrawnRow {
  readonly svg: string;
  readonly width: number;
  readonly height: number;
  /** It begins a part: a good place for a page turn before it. */
  readonly opensPart: boolean;
  readonly bars: readonly number[];
}

/** Which parts of a cell to draw, as ranges of its width in drawing units; null for all of it. */
export type Shown = (cell: ScoreCell) => readonly (readonly [from: number, to: number])[] | null;

const everything: Shown = () => null;

/**
 * Draws cells side by side, the first with its clef and key, as one self-contained SVG. The layers that the
 * style sheet of the site shows and hides are chosen here.
 */
export function drawRow(
  score: Score,
  cells: readonly ScoreCell[],
  look: Look,
  shown: Shown = everything,
): DrawnRow {
  const [first] = cells;
  if (first === undefined) throw new Error('a row of no cells');
  const unit = unitLength(look.sizes.staff, first.staffSpace);
  const grown = look.sizes.figures === null ? 0 : growth;
  const top = look.fingers ? -grown : 0;
  const foot = look.letters ? grown : -first.lettersHeight;
  const size = { top, width: first.preludeWidth, height: first.height + foot - top };
  let body = placed(first.prelude, 0, first.preludeWidth, first.height);
  for (const [i, cell] of cells.entries()) {
    const at = `${cell.name}-${i}`.replace(/[^A-Za-z0-9]/g, '-');
    body += drawCell(cell, size.width, shown(cell), at);
    size.width += cell.width;
  }
  const box = `0 ${size.top} ${round(size.width)} ${round(size.height)}`;
  const style = `<style>${styles(look)}</style>`;
  const defs = `<defs>${glyphsIn(score, body)}</defs>`;
  return {
    svg: `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}" color="#000">${style}${defs}${withMarks(body, score, look)}</svg>`,
    width: size.width * unit,
    height: size.height * unit,
    opensPart: first.opensPart,
    bars: cells.flatMap(c => c.bars),
  };
}

/** Extra height in drawing units for large fingers and letters. */
const growth = 5;

/** A cell at its place in the row. Where only parts of it are shown, the staff continues between them. */
function drawCell(cell: ScoreCell, x: number, shown: ReturnType<Shown>, id: string): string {
  const { svg, width, height } = cell;
  if (shown === null) return placed(svg, x, width, height);
  const [staff] = got(/<path class="staff"[^>]*>/.exec(svg), 'staff in the drawing of a cell');
  const [root] = got(/^\s*<svg\b[^>]*>/.exec(svg), 'svg element in the drawing of a cell');
  const bare = placed(`${root}${staff}</svg>`, x, width, height);
  if (shown.length === 0) return bare;
  const boxes = shown.map(
    ([from, to]) =>
      `<rect x="${round(x + from)}" y="-20" width="${round(to - from)}" height="${height + 40}"/>`,
  );
  const notes = placed(svg.replace(staff, ''), x, width, height);
  return `${bare}<clipPath id="clip-${id}">${boxes.join('')}</clipPath><g clip-path="url(#clip-${id})">${notes}</g>`;
}

/** Places a drawing of the engraver in the row; it may draw beyond its box. */
const placed = (svg: string, x: number, width: number, height: number): string =>
  svg.replace(/^\s*<svg\b[^>]*>/, tag => {
    const ink = [...tag.matchAll(/\s(?:fill|stroke|stroke-width)="[^"]*"/g)].join('');
    return `<svg x="${round(x)}" width="${width}" height="${height}" overflow="visible"${ink}>`;
  });

function glyphsIn(score: Score, body: string): string {
  const used = new Map<string, string>();
  const use = (text: string): void => {
    for (const [, id = ''] of text.matchAll(/href="#([^"]+)"/g)) {
      if (used.has(id)) continue;
      const glyph = got(score.glyphs.get(id), `glyph ${id}`);
      used.set(id, glyph);
      use(glyph); // a head with its stem uses the head
    }
  };
  use(body);
  return [...used.values()].join('');
}

/** Moves stroke signs down where no fingers are shown under them, and up over large ones. */
function withMarks(body: string, score: Score, { fingers, sizes }: Look): string {
  const large = sizes.figures !== null;
  if (fingers && !large) return body;
  const by = fingers ? -growth : score.fingerRow;
  const moved = fingers ? 'layer-marks|lifted|layer-labels' : 'layer-marks|lifted';
  return body.replace(
    new RegExp(`class="(${moved})"`, 'g'),
    `class="$1" transform="translate(0 ${by})"`,
  );
}

function styles({ sizes, marks, fingers, letters, bare }: Look): string {
  const hidden = [
    ...(bare ? ['.layer-labels', '.layer-marks', '.chord', '.anchor-band', '.anchor-edge'] : []),
    ...(fingers ? [] : ['.layer-fingers']),
    ...(letters ? [] : ['.layer-letters']),
    ...(marks === 'all' ? [] : ['.mark-all']),
    ...(marks === 'anchors' ? ['.mark-change'] : []),
  ];
  const size = sizes.figures;
  return [
    'text{font-family:Andika}',
    hidden.length > 0 ? `${hidden.join(',')}{display:none}` : '',
    size === null
      ? ''
      : `.layer-fingers,.layer-letters,.phrase,.part,.chord,.ending{font-size:${size}px}`,
    sizes.lines === 1
      ? ''
      : `.staff{stroke-width:${round(0.7 * sizes.lines)}}.layer-marks{stroke-width:${round(1.8 * Math.sqrt(sizes.lines))}}`,
  ].join('');
}

const round = (x: number): number => Math.round(x * 100) / 100;
