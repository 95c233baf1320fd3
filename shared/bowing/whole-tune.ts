import { at } from '../must.ts';
import type { PlanRequest, WholeTune } from './bowing.ts';
import type { BowingInput } from './bowing-input.ts';
import type { SetPassage } from './find-lead-ins.ts';
import type { LaidStrokes } from './lay-strokes.ts';
import {
  addCost,
  type Cost,
  compareCost,
  type LeadInModel,
  noCost,
  strokeCount,
  strokeDirection,
} from './lead-in-model.ts';
import { type BowingContext, leadInModel, presetOf } from './lead-in-of.ts';
import { solveParities } from './parity-equations.ts';
import { bestBy, type RankedBowing } from './plan-lead-in.ts';
import { editsBetween } from './slur-edits.ts';
import { bowingCost, type RunningSums, runningSums, strokeTerms } from './stroke-terms.ts';
import { type Cell, type TuneCells, tuneCells } from './tune-cells.ts';

/**
 * Mends of a whole tune: the cheapest edits after which every anchor is reached on its stroke, every sign agrees,
 * and the second pass of every repeated part starts as the first.
 *
 * The demands are equations in the parities of the tune's cells (`tune-cells.ts`). Where they can all be met,
 * all values of the free parities are tried. Each choice determines the parity of every cell and the first
 * strokes of its passes; the best bowing of a cell for these is computed once. Edits count once for each
 * written junction, strong beats once for each pass.
 */

/** Most free parities whose values are all tried. */
const mostFree = 16;

/** Sounded notes from `from` (included) to `end` (not included), and the level and preset of their anchor. */
export interface OwnLimits extends PlanRequest {
  readonly from: number;
  readonly end: number;
}

/**
 * Finds the cheapest bowing of a whole tune that meets all demands, or says why there is none. A cell that lies
 * in one of `own` keeps the limits of its level and preset (the first of `own` that contains it); any other
 * those of the book.
 */
export function planWholeTune(
  context: BowingContext,
  score: BowingInput,
  laid: LaidStrokes,
  passages: readonly SetPassage[],
  own: readonly OwnLimits[] = [],
): WholeTune {
  const cut = tuneCells(score, laid, passages);
  if (!cut) return { kind: 'unlike-passes' };
  const solution = solveParities(
    cut.unknowns,
    cut.demands.map(d => d.equation),
  );
  if (solution.kind === 'contradiction') {
    const demands = solution.equations.map(i => at(cut.demands, i).demand);
    return { kind: 'contradiction', demands };
  }
  const { one, free } = solution;
  if (free.length > mostFree) return { kind: 'too-many', free: free.length };
  const bestCell = cellSolver(context, score, cut, own);
  let best: { cost: Cost; bowings: readonly (RankedBowing | null)[] } | null = null;
  for (let choice = 0; choice < 2 ** free.length; choice++) {
    const parities = free.reduce<readonly number[]>(
      (sum, vector, f) => ((choice >> f) & 1 ? sum.map((p, u) => p ^ at(vector, u)) : sum),
      one,
    );
    const found = costOf(cut, parities, bestCell);
    if (found && (!best || compareCost(found.cost, best.cost) < 0)) best = found;
  }
  if (!best) return { kind: 'beyond-limits' };
  const changes = cut.cells.flatMap((cell, c) => {
    const bowing = best.bowings[c]?.bowing; // null where the cell is set
    return bowing ? editsBetween(writtenBowing(score, cell), bowing, cell.events) : [];
  });
  return { kind: 'solved', changes, cost: best.cost };
}

const writtenBowing = (score: BowingInput, cell: Cell): boolean[] =>
  cell.events.slice(1).map(e => !score.joined[e]);

/** Finds the best bowing of a cell; `ups`: number of its passes that begin on an up-bow. null where none keeps the limits. */
type CellSolver = (cell: number, parity: number, ups: number) => RankedBowing | null;

/** Sums the costs of the best bowings of all cells under given parities; null where a cell has none. */
function costOf(
  cut: TuneCells,
  parities: readonly number[],
  bestCell: CellSolver,
): { cost: Cost; bowings: (RankedBowing | null)[] } | null {
  const ups = cut.cells.map(() => 0);
  for (const { cell, start } of cut.played) {
    let { up } = start;
    for (const u of start.of) up ^= at(parities, u);
    ups[cell] = at(ups, cell) + up;
  }
  let cost = noCost;
  const bowings: (RankedBowing | null)[] = [];
  for (const [c, cell] of cut.cells.entries()) {
    if (cell.unknown === null) {
      bowings.push(null);
      continue;
    }
    const found = bestCell(c, at(parities, cell.unknown), at(ups, c));
    if (!found) return null;
    cost = addCost(cost, found.cost);
    bowings.push(found);
  }
  return { cost, bowings };
}

/** Makes a solver of cells. It keeps its results. */
function cellSolver(
  context: BowingContext,
  score: BowingInput,
  cut: TuneCells,
  own: readonly OwnLimits[],
): CellSolver {
  const { settings, tune } = context;
  const forms = cut.cells.map((_, c) => {
    const passes = cut.played.filter(p => p.cell === c);
    const { from, end } = at(passes, 0);
    const limits = own.find(o => passes.some(p => o.from <= p.from && p.end <= o.end));
    const aim = {
      start: 'down',
      arrive: 'down',
      level: limits?.level ?? settings.level,
      preset: presetOf(settings, tune, limits?.preset ?? null),
    } as const;
    const form = leadInModel(context, from, end, score.joined, aim);
    return { form, sums: runningSums(form), passes: passes.length };
  });
  const solved = new Map<number, RankedBowing | null>();
  return (cell, parity, ups) => {
    const key = (ups * forms.length + cell) * 2 + parity;
    const known = solved.get(key);
    if (known !== undefined) return known;
    const { form, sums, passes } = at(forms, cell);
    const arriving = { ...form, arrive: strokeDirection('down', parity) };
    const found = bestInPasses(arriving, passes - ups, ups, sums);
    solved.set(key, found);
    return found;
  };
}

/**
 * Finds the best bowing of a cell that `downs` passes begin on a down-bow and `ups` on an up-bow. The model must
 * start down. The written bowing is allowed beyond the limits where it has the wanted parity. null for none.
 */
export function bestInPasses(
  form: LeadInModel,
  downs: number,
  ups: number,
  sums: RunningSums = runningSums(form),
): RankedBowing | null {
  const inPasses = strokeTerms(form, { straight: downs, turned: ups }, sums);
  if (strokeDirection(form.start, strokeCount(form.written)) === form.arrive) {
    const cost = bowingCost(form, form.written, inPasses);
    const [best] = bestBy(form, 1, inPasses);
    const own = { bowing: form.written, cost };
    return best && compareCost(best.cost, cost) < 0 ? best : own;
  }
  return bestBy(form, 1, inPasses)[0] ?? null;
}
