import layoutStaffGroup from 'abcjs/src/write/layout/staff-group.js';
import type { StaffGroup } from './laid-line.ts';
import type { LineRequest } from './lay-out-lines.ts';

/** abcjs stops stretching a line this near to the width asked for. */
const near = 2;

/** What abcjs begins with, in drawing units for each unit of a note's length. */
export const firstSpace = 30;

/** What abcjs lets the smallest of a line's spaces grow to. */
const widestSpace = 50;

/** How often abcjs tries. */
const tries = 8;

/**
 * The width to stretch each line to: as asked, or as the fullest that asks for the same needs. All
 * begin at `left`.
 */
export function widthsFor(
  lines: readonly LineRequest[],
  groups: readonly StaffGroup[],
  left: number,
): readonly number[] {
  const needed = new Map<number, number>();
  for (const asked of new Set(lines.map(l => l.width))) {
    const alike = groups.filter((_, i) => lines[i]?.width === asked);
    needed.set(asked, Math.max(asked, spreadLines(alike, left, asked) - left));
  }
  const fit = [...needed].every(([asked, width]) => width <= asked + near);
  return lines.map(({ width }) => (fit ? width : (needed.get(width) ?? width)));
}

/**
 * Stands the signs of lines out to a width as abcjs will when it lays the lines out, and says where
 * the widest ends: further right where its notes need more. The lines may be laid out afterwards as
 * if this had not been done, while to lay one out twice would bend its stems.
 */
function spreadLines(groups: readonly StaffGroup[], left: number, width: number): number {
  let widest = width;
  let end = 0;
  for (const group of groups) {
    spreadLine(group, left, widest + left);
    end = Math.max(end, group.w);
    // Those after a line that needs more are stretched to it.
    if (Math.round(group.w - left) > Math.round(widest)) widest = group.w - left;
  }
  return end;
}

function spreadLine(group: StaffGroup, left: number, right: number): void {
  let space = firstSpace;
  for (let i = 0; i < tries; i++) {
    const { spacingUnits, minSpace } = layoutStaffGroup(space, 0, false, group, left);
    if (Math.abs(right - group.w) < near || spacingUnits <= 0) return;
    const fixed = group.w - spacingUnits * space;
    space = (right - fixed) / spacingUnits;
    if (space * minSpace > widestSpace) space = widestSpace / minSpace;
  }
}
