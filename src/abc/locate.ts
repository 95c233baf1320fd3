import type { AbcSource } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';
import type { Place } from '../../shared/problem.ts';

/** Finds the place, in the teacher's file, of an offset in a fence's text. */
export type Locate = (offset: number) => Place;

/** Makes a finder of places. A fence stands some lines down in its file, and some columns in. */
export function locator(source: AbcSource): Locate {
  const starts = [0];
  for (let i = source.text.indexOf('\n'); i >= 0; i = source.text.indexOf('\n', i + 1)) {
    starts.push(i + 1);
  }
  return offset => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const mid = (low + high + 1) >> 1;
      if (at(starts, mid) <= offset) low = mid;
      else high = mid - 1;
    }
    return {
      file: source.file,
      line: source.line + low,
      column: source.indent + offset - at(starts, low) + 1,
    };
  };
}
