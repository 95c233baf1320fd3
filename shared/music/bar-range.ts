/**
 * A passage as a teacher names it, ends included: `A5`, `A5-A6`, `A5:2-A6:4`, `A0`, `B8/2`.
 * Notes count from 1 in each bar, rests left out.
 */
export interface BarRange {
  readonly from: BarPoint;
  readonly to: BarPoint;
}

/** One end of a range of bars. */
export interface BarPoint {
  /** Name of the bar: `B8/2`. */
  readonly bar: string;
  readonly note: number | null;
}

/** Reads `A5:2-A6:4`; null when it is not a passage. */
export function parseBarRange(text: string): BarRange | null {
  const [from, to, ...more] = text.trim().split(/\s*[-–]\s*/);
  if (from === undefined || more.length > 0) return null;
  const start = parsePoint(from);
  const end = to === undefined ? start : parsePoint(to);
  return start && end ? { from: start, to: end } : null;
}

function parsePoint(text: string): BarPoint | null {
  const m = /^([A-Za-z][A-Za-z']*)(\d+)(\/\d+(?:,\d+)*)?(?::(\d+))?$/.exec(text);
  if (!m?.[1] || m[4] === '0') return null;
  return {
    bar: `${m[1]}${m[2]}${m[3] ?? ''}`,
    note: m[4] === undefined ? null : Number(m[4]),
  };
}

/** A range of bars as a teacher writes it, such as `A5-A6`. */
export const barRangeText = (r: BarRange): string => {
  const [from, to] = [pointText(r.from), pointText(r.to)];
  return from === to ? from : `${from}-${to}`;
};

const pointText = (p: BarPoint): string => (p.note === null ? p.bar : `${p.bar}:${p.note}`);
