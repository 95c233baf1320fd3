import { describe, expect, test } from 'vitest';
import type { Direction } from '../../shared/bowing/bowing.ts';
import { strokesOf, tuneOf } from './strokes-of.ts';
import { anchorAt, studyOf } from './study-of.ts';

/** Strokes of a tune with one anchor, and the rules that are broken. */
function withAnchor(abc: string, bars: string, start: Direction, tuneStart?: Direction) {
  const tune = tuneOf(abc);
  const request = { anchors: [anchorAt(bars, start)], start: tuneStart ?? null };
  const { bowing, problems } = studyOf(tune, request);
  return {
    strokes: bowing.plan.strokes.map(s => (s.direction === 'down' ? 'D' : 'U')).join(''),
    rules: problems.map(p => p.rule),
    bare: strokesOf(tune, { start: tuneStart ?? null }).replaceAll(' ', ''),
    bowing,
  };
}

/** `docs/writing-a-book.md`: strokes before the first sign are counted back from it, anchor or none. */
describe('an anchor before the first sign', () => {
  const signed = 'DEFG ABc2|d2e2 f2g2|vf4 e4|]';

  test('that says what the sign says changes nothing, and nothing is said', () => {
    const { strokes, rules, bare } = withAnchor(signed, 'A2', 'down');
    expect(strokes).toBe('UDUDUDUDUDUDU');
    expect(strokes).toBe(bare);
    expect(rules).toEqual([]);
  });

  test('that says otherwise is told of once, as against the sign, and states nothing', () => {
    const { strokes, rules, bare } = withAnchor(signed, 'A2', 'up');
    expect(strokes).toBe(bare);
    expect(rules).toEqual(['anchor-against-mark']);
  });

  test('is mended between it and the sign, since what comes before is counted back', () => {
    const { bowing } = withAnchor('DEFG ABc2|d2e2 f2g2|c2d2 e2f2|vf4 e4|]', 'A2', 'up');
    const [anchor] = bowing.anchors;
    expect(anchor?.mends.length).toBeGreaterThan(0);
    expect(anchor?.leadIns.flatMap(l => l.plans)).toEqual([]);
  });

  test('and a rest before the sign is no contradiction: the bow may lift there', () => {
    const { rules, strokes } = withAnchor('DEFG ABc2|d2e2 f2z2|vf4 e4|]', 'A2', 'down');
    expect(rules).toEqual(['arrival-missed']);
    expect(strokes.slice(7, 11)).toBe('DUDD');
  });
});

describe('an anchor among signs', () => {
  test('that agree with each other and not with it is against them, and they are followed', () => {
    const { rules, strokes, bare } = withAnchor('vDEFG ABc2|d2e2 f2g2|uf4 e4|]', 'A2', 'down');
    expect(rules).toEqual(['anchor-against-mark']);
    expect(strokes).toBe(bare);
  });
  test('that is missed, and after which the next sign fits, is a missed arrival', () => {
    const { rules } = withAnchor('vDEFG ABc2|d2e2 f2g2|vf4 e4|]', 'A2', 'down');
    expect(rules).toEqual(['arrival-missed']);
  });
  test('that is reached, and after which the next sign does not fit, is a conflict of that sign', () => {
    const { rules } = withAnchor('vDEFG ABcB|d2e2 f2g2|uf4 e4|]', 'A2', 'down');
    expect(rules).toEqual(['stroke-conflict']);
  });
  test('with the other sign on its first note is against it, and the sign is followed', () => {
    const { rules, strokes, bowing } = withAnchor('DEFG ABcd|ud4 D4|', 'A2', 'down');
    expect(rules).toEqual(['anchor-against-mark']);
    expect(strokes).toBe('UDUDUDUDUD');
    expect(bowing.whole?.kind).toBe('contradiction');
  });
});
