import abcjs from 'abcjs';
import { JSDOM } from 'jsdom';
import { expect, test } from 'vitest';
import type { Shape } from '../../src/engrave/drawing-surface.ts';
import { layOutLines } from '../../src/engrave/lay-out-lines.ts';
import { measureText } from '../../src/engrave/measure-text.ts';
import type { ParsedTune } from '../../src/engrave/split-lines.ts';

/** One line with most signs, no words: abcjs in a document must guess at the width of words. */
const abc = `X:1
M:6/8
L:1/8
%%stretchlast 1
K:D
|:(dfa) {g}a3|[df]2e (cBA|^c>e =f) ~A2 z|d3- d2 .e:|]
`;

const width = 500;
/** The height of stems that abcjs itself asks for. */
const abcjsStem = 36.67;

/** The same line as abcjs draws it in a document by jsdom: paths in drawing order. */
function drawInDocument(): readonly string[] {
  const { window } = new JSDOM('<div id="page"></div>');
  const before = {
    window: globalThis.window,
    document: globalThis.document,
    navigator: globalThis.navigator,
  };
  Object.assign(globalThis, {
    window,
    document: window.document,
    navigator: window.navigator,
  });
  try {
    const page = window.document.querySelector('#page') as unknown as HTMLElement;
    abcjs.renderAbc(page, abc, { staffwidth: width, paddingleft: 8, paddingright: 0 });
    return [...page.querySelectorAll('path')].map(p => p.getAttribute('d') ?? '');
  } finally {
    Object.assign(globalThis, before);
  }
}

function drawOnSurface(): readonly string[] {
  const parsed = abcjs.parseOnly(abc)[0] as unknown as ParsedTune;
  const staff = parsed.lines[0]?.staff?.[0];
  if (!staff) throw new Error('no staff in the test tune');
  const { clef, key, meter } = staff;
  const line = { elements: staff.voices[0] ?? [], clef, key, meter: meter ?? null };
  const { lines } = layOutLines(parsed, [line], width, measureText, abcjsStem);
  const paths = (shape: Shape): readonly string[] =>
    shape.tag === 'g' ? shape.children.flatMap(paths) : [shape.attributes.path ?? ''];
  return lines[0] ? paths(lines[0].draw().root) : [];
}

/** Commands and numbers; only heights may differ, all by the same amount. */
const numbers = (path: string): readonly number[] =>
  (path.match(/-?[\d.]+(?:e-?\d+)?/g) ?? []).map(Number);

test('our surface gets from abcjs what a document gets, shape by shape', () => {
  const expected = drawInDocument();
  const actual = drawOnSurface();
  const shape = (path: string): string => path.replace(/[\d.\s-]+/g, '');
  expect(actual.map(shape)).toEqual(expected.map(shape));
  const starts = (paths: readonly string[], k: 0 | 1) => paths.map(p => numbers(p)[k] ?? 0);
  const dy = (starts(expected, 1)[0] ?? 0) - (starts(actual, 1)[0] ?? 0);
  const rounded = (ns: readonly number[]): readonly number[] =>
    ns.map(n => Math.round(n * 10) / 10);
  expect(rounded(starts(actual, 0))).toEqual(rounded(starts(expected, 0)));
  expect(rounded(starts(actual, 1).map(y => y + dy))).toEqual(rounded(starts(expected, 1)));
});
