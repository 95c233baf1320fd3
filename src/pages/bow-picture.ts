import type { BowPath } from '../../shared/bowing/bow-path.ts';
import { type Fraction, toNumber } from '../../shared/music/fraction.ts';
import type { Direction, Tune } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';

/**
 * A picture of a bow's path: the bow lies across the top, frog on the left, and under it time runs
 * down the page, one row a stroke. A line goes to the right on a down-bow and back on an up-bow, with
 * a dot where each note begins. What lies outside the two uprights is beyond the bow's ends. All
 * numbers are in the picture's own units, of which `width` go across.
 */
export interface BowPicture {
  readonly width: number;
  readonly height: number;
  readonly frog: number;
  readonly middle: number;
  readonly tip: number;
  readonly labelsAt: number;
  /** Left edge of the column of stroke signs. */
  readonly signsAt: number;
  readonly top: number;
  readonly bottom: number;
  readonly stick: string;
  readonly hair: string;
  readonly block: string;
  readonly rows: readonly {
    readonly direction: Direction;
    readonly signAt: number;
    /** Name of the bar that begins in the row; null where none does, or there is no room for it. */
    readonly bar: string | null;
    readonly textAt: number;
    readonly ruleAt: number;
  }[];
  /** SVG paths of the line on the bow, and beyond its ends. */
  readonly onBow: string;
  readonly offBow: string;
  readonly dots: readonly Point[];
  readonly start: Point;
  /** Where the line first leaves the bow. */
  readonly leaves: (Point & { readonly textAt: number; readonly anchor: string }) | null;
  /** From below the first place to below the last; null where they are the same. */
  readonly drift: { readonly path: string; readonly head: string; readonly textAt: number } | null;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

const width = 320;
const signsAt = 46;
const edge = { left: 68, right: 12 };
const top = 46;

/** Draws the path of the bow over some strokes as SVG. */
export function bowPicture(tune: Tune, path: BowPath): BowPicture {
  const row = path.strokes.length > 30 ? 9 : 12;
  const [low, high] = [
    Math.min(0, toNumber(path.least)),
    Math.max(toNumber(path.bow), toNumber(path.most)),
  ];
  const x = (place: number): number =>
    rounded(edge.left + ((place - low) / (high - low)) * (width - edge.left - edge.right));
  const y = (stroke: number): number => top + 4 + stroke * row;
  const [frog, tip] = [x(0), x(toNumber(path.bow))];
  const bottom = y(path.strokes.length) + 4;
  const line = splitLine(path, x, y, frog, tip);
  const [from, to] = [x(toNumber(path.start)), x(toNumber(path.end))];
  const driftAt = bottom + 10;
  const way = to > from ? -5 : 5;
  return {
    width,
    height: bottom + 18,
    frog,
    middle: rounded((frog + tip) / 2),
    tip,
    labelsAt: top - 6,
    signsAt,
    top,
    bottom,
    stick: `M${frog} 9Q${rounded((frog + tip) / 2)} 17 ${rounded(tip - 3)} 8L${tip} 6V18`,
    hair: `M${frog + 12} 20L${tip} 18`,
    block: `M${frog} 9h12v11h-9q-3 0 -3 -3Z`,
    rows: rowsOf(tune, path, y, row),
    ...line,
    dots: path.strokes.flatMap((stroke, s) =>
      stroke.notes.map(note => pointOn(stroke, s, note.from, x, y)),
    ),
    start: { x: from, y: y(0) },
    drift:
      from === to
        ? null
        : {
            path: `M${from} ${driftAt - 4}v8M${from} ${driftAt}H${to}`,
            textAt: driftAt + 4,
            head: `M${to} ${driftAt}l${way} -4v8Z`,
          },
  };
}

function rowsOf(
  { bars, events }: Tune,
  path: BowPath,
  y: (stroke: number) => number,
  height: number,
): BowPicture['rows'] {
  const opens = path.strokes.map(({ notes }, s) => {
    const { bar } = at(events, at(notes, 0).event);
    const before = path.strokes[s - 1]?.notes.at(-1);
    return before && bar === at(events, before.event).bar ? null : bar;
  });
  // Names of short bars would overlap. From the end on, so that a pickup loses its name, not the bar after it.
  let below = Number.POSITIVE_INFINITY;
  const named = opens
    .toReversed()
    .map((bar, back) => {
      const height = y(opens.length - 1 - back);
      if (bar === null || below - height < 11) return null;
      below = height;
      return at(bars, bar).name;
    })
    .toReversed();
  return path.strokes.map(({ direction }, s) => ({
    direction,
    signAt: rounded(y(s) + height / 2 - 3.5),
    bar: at(named, s),
    textAt: rounded(y(s) + height / 2 + 4),
    ruleAt: y(s),
  }));
}

/** The zig-zag cut where it crosses an end of the bow. */
function splitLine(
  path: BowPath,
  x: (place: number) => number,
  y: (stroke: number) => number,
  frog: number,
  tip: number,
): Pick<BowPicture, 'onBow' | 'offBow' | 'leaves'> {
  let [onBow, offBow] = ['', ''];
  let leaves: BowPicture['leaves'] = null;
  path.strokes.forEach(({ from, to }, s) => {
    const [a, b] = [
      { x: x(toNumber(from)), y: y(s) },
      { x: x(toNumber(to)), y: y(s + 1) },
    ];
    const cuts = [frog, tip]
      .filter(end => (end - a.x) * (end - b.x) < 0)
      .toSorted((p, q) => Math.abs(p - a.x) - Math.abs(q - a.x))
      .map(end => ({ x: end, y: rounded(a.y + ((end - a.x) / (b.x - a.x)) * (b.y - a.y)) }));
    const points = [a, ...cuts, b];
    points.slice(1).forEach((point, i) => {
      const last = points[i] as Point;
      const middle = (last.x + point.x) / 2;
      const piece = `M${last.x} ${last.y}L${point.x} ${point.y}`;
      if (middle >= frog && middle <= tip) onBow += piece;
      else {
        offBow += piece;
        const atTip = middle > tip;
        leaves ??= {
          ...last,
          textAt: rounded(last.x + (atTip ? -7 : 7)),
          anchor: atTip ? 'end' : 'start',
        };
      }
    });
  });
  return { onBow, offBow, leaves };
}

function pointOn(
  stroke: { readonly from: Fraction; readonly to: Fraction },
  s: number,
  place: Fraction,
  x: (place: number) => number,
  y: (stroke: number) => number,
): Point {
  const [from, to, at] = [toNumber(stroke.from), toNumber(stroke.to), toNumber(place)];
  return { x: x(at), y: rounded(y(s) + ((at - from) / (to - from)) * (y(s + 1) - y(s))) };
}

const rounded = (n: number): number => Math.round(n * 10) / 10;
