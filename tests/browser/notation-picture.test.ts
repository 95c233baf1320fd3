import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { DrawnCell } from '../../src/engrave/draw-cell.ts';
import { plainPaper, type Shape } from '../../src/engrave/drawing-surface.ts';
import { engraveTune } from '../../src/engrave/engrave-tune.ts';
import { lineWidth, step } from '../../src/engrave/lay-out-lines.ts';
import { layTune } from '../../src/engrave/lay-tune.ts';
import { staffTop } from '../../src/engrave/note-places.ts';
import { markHeight, markWidth, type PlacedMark } from '../../src/engrave/place-above.ts';
import type { ScoreCell } from '../../src/engrave/score.ts';
import { composeStudy } from '../engrave/compose-study.ts';
import { jig, reel, slipJig } from '../engrave/test-tunes.ts';
import { startChromium } from './chromium.ts';

/*
 * Making a drawing light must not be seen: at twice the size, its picture is held to the same
 * drawing written out plainly, every glyph in full and every number as abcjs gives it.
 */

let browser: Browser;
beforeAll(async () => {
  browser = await startChromium();
});
afterAll(() => browser?.close());

/** Pixels of a staff space at the size of a laptop's page; pictures are taken at twice that. */
const space = 10;

const leaves = (shape: Shape): readonly Shape[] =>
  shape.tag === 'g' ? shape.children.flatMap(leaves) : [shape];

/** A shape of abcjs's as it is. */
function plainShape({ tag, attributes, text }: Shape): string {
  const { path, stroke, transform, x, y } = attributes;
  if (tag === 'text') {
    return `<text x="${x}" y="${y}" font-size="${attributes['font-size']}" text-anchor="${attributes['text-anchor'] ?? 'start'}">${text}</text>`;
  }
  const line = stroke && stroke !== 'none' ? ' stroke="currentColor" fill="none"' : '';
  return `<path d="${path}"${line}${transform ? ` transform="${transform.replaceAll('--', '')}"` : ''}/>`;
}

function plainMark({ x, y, direction, varies }: PlacedMark): string {
  const [left, right, top] = [x - markWidth / 2, x + markWidth / 2, y - markHeight];
  const sign =
    direction === 'down'
      ? `M${left} ${y}L${left} ${top}L${right} ${top}L${right} ${y}M${right} ${top + 2}L${left} ${top + 2}`
      : `M${left} ${top}L${x} ${y}L${right} ${top}`;
  const dot = varies ? `M${x - 1} ${top - 3}L${x + 1} ${top - 3}` : '';
  return `<path fill="none" stroke="currentColor" stroke-width="1.8" d="${sign}${dot}"/>`;
}

/** A cell written out plainly: staff, notes and all that hangs on them, stroke signs. */
function plainCell(drawn: DrawnCell, staff: number, width: number, height: number, dy: number) {
  const lines = [0, 1, 2, 3, 4].map(i => {
    const y = staffTop + 2 * step * i;
    return `<path stroke="currentColor" stroke-width="${lineWidth}" d="M0 ${y}H${staff}"/>`;
  });
  const lifts = new Map([...drawn.above.lifts].map(([i, lift]) => [drawn.slurs[i]?.shape, lift]));
  const shapes = drawn.root.children.flatMap(shape => {
    if (/^ending$/.test(shape.attributes['data-name'] ?? '')) return [];
    const lift = lifts.get(shape);
    const written = leaves(shape)
      .filter(s => !/^(chord|annotation)$/.test(s.attributes['data-name'] ?? ''))
      .map(plainShape)
      .join('');
    return lift === undefined ? [written] : [`<g transform="translate(0 ${-lift})">${written}</g>`];
  });
  const body = [...lines, ...shapes, ...drawn.above.marks.map(plainMark)].join('');
  return `<svg class="cell" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" fill="currentColor"><g transform="translate(0 ${dy})">${body}</g></svg>`;
}

/** What is text of ours, and the same in both. */
const hidden =
  '.chord, .layer-labels, .layer-fingers, .layer-letters, .ending, path[stroke-width=".9"]';

const sized = ({ svg, width, height }: ScoreCell): string =>
  svg.replace('<svg', `<svg width="${width}" height="${height}"`);

const pageOf = (symbols: string, cells: string): string =>
  `<!doctype html><style>body { margin: 0; color: #000; background: #fff } svg { display: block; overflow: visible } .cell { zoom: ${space / (2 * step)} } ${hidden} { display: none }</style><svg width="0" height="0"><defs>${symbols}</defs></svg>${cells}`;

/** How two pictures differ: pixels in all, those that differ by more than an eighth, the most. */
function compare([one, two]: readonly [string, string]): Promise<{
  readonly pixels: number;
  readonly differ: number;
  readonly most: number;
}> {
  const read = async (address: string) => {
    const image = new Image();
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.width, image.height];
    const context = canvas.getContext('2d');
    context?.drawImage(image, 0, 0);
    return context?.getImageData(0, 0, image.width, image.height).data ?? new Uint8ClampedArray();
  };
  return Promise.all([read(one), read(two)]).then(([a, b]) => {
    if (a.length !== b.length) throw new Error('the pictures have different sizes');
    let [differ, most] = [0, 0];
    for (let i = 0; i < a.length; i += 4) {
      const by = Math.abs((a[i] ?? 0) - (b[i] ?? 0));
      most = Math.max(most, by);
      if (by > 255 / 8) differ++;
    }
    return { pixels: a.length / 4, differ, most };
  });
}

test.each([
  ['reel', reel],
  ['jig', jig],
  ['slip jig', slipJig],
])(
  'the light drawing of a %s looks like the plain one',
  { timeout: 120_000 },
  async (name, text) => {
    const study = composeStudy(text);
    const { cells, drawn, widths, rows } = layTune(plainPaper, study, {});
    const light = engraveTune(study);
    const plain = drawn.map((cell, i) => {
      const width = widths[i] ?? 0;
      const staff = cells[i]?.closesPart ? cell.width : width;
      return plainCell(cell, staff, width, rows.height, rows.dy);
    });
    const tab = await browser.newPage({
      deviceScaleFactor: 2,
      viewport: { width: 600, height: 400 },
    });
    const picture = async (html: string): Promise<string> => {
      await tab.setContent(html);
      const shot = await tab.screenshot({ fullPage: true });
      return `data:image/png;base64,${shot.toString('base64')}`;
    };
    const pictures = [
      await picture(pageOf(light.symbols, light.cells.map(sized).join('\n'))),
      await picture(pageOf('', plain.join('\n'))),
    ] as const;
    const { pixels, differ, most } = await tab.evaluate(compare, pictures);
    await tab.close();
    console.log(
      `${name}: ${differ} of ${pixels} pixels differ by more than an eighth ` +
        `(${((100 * differ) / pixels).toFixed(3)} %), the most by ${Math.round((100 * most) / 255)} %`,
    );
    expect(pixels).toBeGreaterThan(500_000);
    expect(differ).toBeLessThanOrEqual(pixels / 1000);
    // A line's edge moved by half a pixel, as anti-aliasing does.
    expect(most).toBeLessThanOrEqual(128);
  },
);
