import abcjs from 'abcjs';
import { describe, expect, test } from 'vitest';
import { measureText } from '../../shared/engraving/measure-text.ts';
import {
  type MakePaper,
  makeSurface,
  type Paper,
  plainPaper,
  type Shape,
} from '../../src/engrave/drawing-surface.ts';
import { engraveOn, engraveTune } from '../../src/engrave/engrave-tune.ts';
import { layOutLines } from '../../src/engrave/lay-out-lines.ts';
import type { ParsedTune } from '../../src/engrave/split-lines.ts';
import { type NamedTune, onTunes } from '../tunes/on-tunes.ts';
import { composeStudy } from './compose-study.ts';
import { inDocument } from './document-paper.ts';
import { jig, reel, slipJig } from './test-tunes.ts';

/**
 * The reference is abcjs's own surface in a document by jsdom: the same lines drawn there and on
 * ours must be the same markup, byte for byte, and make the same score.
 */

/** The teacher's own lines, laid out by abcjs and drawn on papers of a kind, each read by `read`. */
function drawLines<T>(text: string, makePaper: MakePaper, read: (paper: Paper) => T): readonly T[] {
  const parsed = abcjs.parseOnly(text)[0] as unknown as ParsedTune;
  const lines = parsed.lines.flatMap(({ staff }) => {
    const first = staff?.[0];
    if (!first) return [];
    const { clef, key, meter } = first;
    return [{ elements: first.voices[0] ?? [], clef, key, meter: meter ?? null, width: 600 }];
  });
  let last: Paper | null = null;
  const laid = layOutLines(parsed, lines, measureText, measure => {
    last = makePaper(measure);
    return last;
  });
  return laid.map(line => {
    line.draw();
    if (!last) throw new Error('nothing to draw on');
    return read(last);
  });
}

const referenceMarkup = ({ surface }: Paper): string =>
  (surface as { readonly svg: SVGSVGElement }).svg.innerHTML;
const ownMarkup = (paper: Paper): string => paper.root().children.map(markup).join('');

/** A shape as the elements that abcjs's own surface makes of the same call. */
function markup({ tag, attributes, children, text }: Shape): string {
  const { path, klass, prepend, ...others } = attributes;
  if (tag === 'path') return element('path', renamed(attributes), '');
  if (tag === 'g') {
    const { fill, stroke, 'data-name': name, ...later } = others;
    const first = Object.entries({ class: klass, fill, stroke, 'data-name': name });
    const given = first.filter(([, value]) => value);
    return element('g', [...given, ...Object.entries(later)], children.map(markup).join(''));
  }
  const spans = text.split('\n').map((line, i) => {
    const dy = i === 0 ? [] : [['dy', '1.2em'] as const];
    return element('tspan', [['x', attributes.x ?? '0'], ...dy], escaped(line));
  });
  return element('text', [['stroke', 'none'], ...Object.entries(attributes)], spans.join(''));
}

const renamed = (attributes: Shape['attributes']) =>
  Object.entries(attributes).map(
    ([name, value]) => [name === 'path' ? 'd' : name === 'klass' ? 'class' : name, value] as const,
  );

function element(
  tag: string,
  attributes: readonly (readonly [string, string | undefined])[],
  inside: string,
): string {
  const spelt = attributes.map(
    ([name, value = '']) => ` ${name}="${escaped(value).replaceAll('"', '&quot;')}"`,
  );
  return `<${tag}${spelt.join('')}>${inside}</${tag}>`;
}

const escaped = (text: string): string =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll('\u00a0', '&nbsp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;');

const tests = [reel, jig, slipJig].map(abc => ({ name: 'a tune of this room', abc }));

function compareSurfaces(tunes: readonly NamedTune[]): void {
  inDocument(documentPaper => {
    for (const { name, abc } of tunes) {
      const reference = drawLines(abc, documentPaper, referenceMarkup);
      expect(drawLines(abc, plainPaper, ownMarkup), name).toEqual(reference);
      const study = composeStudy(abc);
      const { cells } = engraveOn(documentPaper, study, {});
      expect(engraveOn(plainPaper, study, {}).cells, name).toEqual(cells);
    }
  });
}

describe('our surface gets from abcjs what a document gets: the same markup and score', () => {
  test('of the tunes of this room', () => compareSurfaces(tests));
  onTunes('of many tunes', 25, compareSurfaces, ['slow']);
});

describe('a call that our surface lacks', () => {
  test('throws, and says which', () => {
    const surface = makeSurface(measureText) as unknown as { circle(): void };
    expect(() => surface.circle()).toThrow('the drawing surface lacks circle');
  });

  test('is none where chord symbols are asked for in boxes: every note is drawn', () => {
    const study = composeStudy(reel.replace('K:D', '%%gchordfont Helvetica 12 box\nK:D'));
    const { cells } = engraveTune(study);
    const notes = cells.flatMap(c => [...c.svg.matchAll(/data-n="(\d+)"/g)].map(m => Number(m[1])));
    expect(notes).toEqual(study.tune.events.flatMap((e, i) => (e.kind === 'note' ? [i] : [])));
  });
});
