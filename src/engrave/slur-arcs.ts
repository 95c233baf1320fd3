import type { Shape } from './drawing-surface.ts';
import type { Box } from './note-places.ts';

/**
 * Slurs and ties as abcjs draws them: a crescent of two curves, out along one and back along the
 * other, from tip to tip.
 */
export interface Arc {
  readonly shape: Shape;
  /** The outer curve: tip, two guides, tip, as x and y in turn. */
  readonly outer: readonly number[];
  /** The inner curve from the same tip. */
  readonly inner: readonly number[];
  /** Arches upwards. */
  readonly above: boolean;
}

/** The arc that a shape is; null for any other shape. */
export function readArc(shape: Shape): Arc | null {
  if (shape.tag !== 'path') return null;
  const path = shape.attributes.path ?? '';
  if (!/^M[^MLCz]+C[^MLCz]+(?:C[^MLCz]+z?)?\s*$/.test(path)) return null;
  const n = (path.match(/-?[\d.]+(?:e-?\d+)?/g) ?? []).map(Number);
  const outer = n.slice(0, 8);
  const back = n.slice(8, 12);
  const inner =
    back.length < 4 ? outer : [n[0], n[1], back[2], back[3], back[0], back[1], n[6], n[7]];
  const middle = heightAt(outer, 0.5);
  return {
    shape,
    outer,
    inner: inner as number[],
    above: middle < ((outer[1] ?? 0) + (outer[7] ?? 0)) / 2,
  };
}

const pieces = 8;

/** Boxes along the arc, when it is moved up by `lift`. */
export function arcBoxes({ outer, inner }: Arc, lift = 0): readonly Box[] {
  return Array.from({ length: pieces }, (_, i) => {
    const [from, to] = [i / pieces, (i + 1) / pieces];
    const [left, right] = [acrossAt(outer, from), acrossAt(outer, to)];
    const [a, b] = [heightAt(outer, from), heightAt(outer, to)];
    const [c, d] = [heightAt(inner, from), heightAt(inner, to)];
    return {
      left: Math.min(left, right),
      right: Math.max(left, right),
      top: Math.min(a, b, c, d) - lift,
      bottom: Math.max(a, b, c, d) - lift,
    };
  });
}

/** Air between a finger and the slur over it. */
const air = 1.5;

/**
 * How far up an arc has to go so that every box it would run through, and every other box under it
 * then, stands clear below it; 0 where it runs through none.
 */
export function liftArc(arc: Arc, boxes: readonly Box[]): number {
  if (!arc.above) return 0;
  const along = arcBoxes(arc);
  const meets = (piece: Box, box: Box): boolean => piece.right > box.left && piece.left < box.right;
  const strikes = boxes.some(box =>
    along.some(p => meets(p, box) && p.bottom > box.top - air && p.top < box.bottom),
  );
  if (!strikes) return 0;
  const needed = boxes.flatMap(box =>
    along.filter(p => meets(p, box)).map(p => p.bottom - (box.top - air)),
  );
  return Math.max(0, ...needed);
}

const heightAt = (curve: readonly number[], t: number): number => along(curve, t, 1);
const acrossAt = (curve: readonly number[], t: number): number => along(curve, t, 0);

function along(curve: readonly number[], t: number, k: 0 | 1): number {
  const [a = 0, b = 0, c = 0, d = 0] = [curve[k], curve[k + 2], curve[k + 4], curve[k + 6]];
  const s = 1 - t;
  return s * s * s * a + 3 * s * s * t * b + 3 * s * t * t * c + t * t * t * d;
}
