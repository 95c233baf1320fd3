import { at } from '../must.ts';
import type { Demand } from './bowing.ts';
import type { BowingInput } from './bowing-input.ts';
import type { SetPassage } from './find-lead-ins.ts';
import { layScore } from './lay-strokes.ts';
import { addCost, type Cost, compareCost, noCost, strokeDirection } from './lead-in-model.ts';
import type { BowingContext } from './lead-in-of.ts';
import { solveParities } from './parity-equations.ts';
import { bestBy, type RankedBowing } from './plan-lead-in.ts';
import { type Cell, type PlacedDemand, type TuneCells, tuneCells } from './tune-cells.ts';
import {
  laidFreely,
  likeness,
  partStart,
  type Way,
  type WayModel,
  wayModel,
  wayTerms,
} from './way-model.ts';

/**
 * A whole tune bowed in a way of bowing: every pass through a part begins on its stroke, every anchor and
 * sign is met in every pass, like phrases are bowed alike, and as few junctions as possible differ from the
 * way itself (bends).
 *
 * The tune is cut at phrases, parts, anchors and signs. Cells with the same notes share one unknown, the
 * parity of their number of strokes; the demands on the tune are equations in these (`tune-cells.ts`).
 * Where the way does not prefer a stroke on strong beats, the cost of a cell depends on its parity only, and
 * unknowns that no equation joins are independent; otherwise it depends on the first stroke of the cell too.
 * For each independent set all values of its free parities are tried, and each cell is solved by dynamic
 * programming. So no other bowing has a lower cost (junctions bent, wishes not met, strong beats off).
 *
 * Example: `|: a b :|` and `|: a c :|`, each phrase eight separate quavers, where the way slurs two notes of
 * a. p_a + p_b = 0 and p_a + p_c = 0, so either a changes, which is written twice, or b and c do: two
 * junctions in each case. The wishes of the way decide.
 */
export interface LaidWay {
  readonly cells: readonly LaidCell[];
  /** Demands that are met by a lift before their event, since no bowing meets them all. */
  readonly lifts: readonly PlacedDemand[];
  /** Whether like phrases are bowed alike; false where that leaves too many free parities to try. */
  readonly alike: boolean;
  readonly cost: Cost;
}

/** One cell of the tune, and its bowing. */
export interface LaidCell {
  readonly cell: Cell;
  readonly model: WayModel;
  /** The bowing of the way without demands, and with them; true for each junction where the stroke changes. */
  readonly free: readonly boolean[];
  readonly bowing: readonly boolean[];
  /** The demand that decides the parity of its strokes; null where none does. */
  readonly decidedBy: Demand | null;
}

/** Most free parities whose values are all tried: 2^12 choices. */
const mostFree = 12;

/** Bows a tune in a way, regardless of its slurs outside `passages`; null where cells overlap (`tuneCells`). */
export function layWay(
  context: BowingContext,
  score: BowingInput,
  passages: readonly SetPassage[],
  way: Way,
): LaidWay | null {
  const laid = layScore(score);
  const inPassage = (e: number): boolean => passages.some(p => p.first <= e && e <= p.last);
  const starts = new Map(
    score.runs
      .map(run => run.firstFull)
      .filter(k => !inPassage(at(score.performance.notes, k).event))
      .map(k => [k, partStart(score.start, k === 0)] as const),
  );
  const lifts = new Map<number, PlacedDemand>();
  let alike = true;
  for (;;) {
    const phrases = alike && way.preset.phraseEndsChange ? context.phraseStarts : new Set<number>();
    const cut = tuneCells(score, laid, passages, {
      cuts: phrases,
      nameOf: events => (alike ? likeness(context, events) : null),
      starts,
      lifts: new Set(lifts.keys()),
    });
    if (!cut) return null;
    const found = solveCells(context, cut, way);
    if (found === 'too-many') {
      if (!alike) return null;
      alike = false;
    } else if ('cells' in found) return { ...found, lifts: [...lifts.values()], alike };
    else lifts.set(found.event, found);
  }
}

/** The cheapest bowing of all cells; or, where the demands contradict each other, the one to meet by a lift. */
function solveCells(
  context: BowingContext,
  cut: TuneCells,
  way: Way,
): Pick<LaidWay, 'cells' | 'cost'> | PlacedDemand | 'too-many' {
  const solution = solveParities(
    cut.unknowns,
    cut.demands.map(d => d.equation),
  );
  if (solution.kind === 'contradiction') {
    return toLift(solution.equations.map(i => at(cut.demands, i)));
  }
  const solver = unknownSolver(context, cut, way);
  const parities = [...solution.one];
  const chosen = new Map<number, RankedBowing>();
  let cost = noCost;
  for (const set of independentSets(cut, way.preset.strongBeat !== null)) {
    const free = solution.free.filter(vector => vector.some((bit, u) => bit && set.has(u)));
    if (free.length > mostFree) return 'too-many';
    const best = bestOfSet(solution.one, free, set, solver);
    if (!best) return toLift(cut.demands.filter(d => d.equation.of.some(u => set.has(u))));
    for (const [u, bowing] of best.bowings) chosen.set(u, bowing);
    for (const u of set) parities[u] = at(best.parities, u);
    cost = addCost(cost, best.cost);
  }
  const cells = cut.cells.flatMap(cell => {
    if (cell.unknown === null) return [];
    const { model, free } = solver.modelOf(cell.unknown);
    const { bowing } = chosen.get(cell.unknown) ?? { bowing: free };
    const by = cut.demands.find(d => d.equation.of.includes(cell.unknown ?? -1));
    return [{ cell, model, free, bowing, decidedBy: by?.demand ?? null }];
  });
  return { cells, cost };
}

/** Of contradicting demands, the one to meet by a lift: first a start of a part, then a sign, then an anchor. */
function toLift(clash: readonly PlacedDemand[]): PlacedDemand {
  const kinds = ['repeat', 'sign', 'anchor', 'opening'];
  return at(
    clash.toSorted((a, b) => kinds.indexOf(a.demand.kind) - kinds.indexOf(b.demand.kind)),
    0,
  );
}

/** Sets of unknowns that can be solved separately. `byStart`: costs depend on the first stroke of a cell too. */
function independentSets(cut: TuneCells, byStart: boolean): ReadonlySet<number>[] {
  const setOf = Array.from({ length: cut.unknowns }, (_, u) => new Set([u]));
  const join = (unknowns: readonly number[]): void => {
    const [first] = unknowns;
    if (first === undefined) return;
    for (const u of unknowns) {
      const [into, from] = [at(setOf, first), at(setOf, u)];
      if (into === from) continue;
      for (const moved of from) {
        into.add(moved);
        setOf[moved] = into;
      }
    }
  };
  for (const { equation } of cut.demands) join(equation.of);
  for (const { cell, start } of byStart ? cut.played : []) {
    const own = at(cut.cells, cell).unknown;
    if (own !== null) join([own, ...start.of]);
  }
  return [...new Set(setOf)];
}

interface UnknownSolver {
  readonly modelOf: (unknown: number) => {
    readonly model: WayModel;
    readonly free: readonly boolean[];
  };
  /** Best bowing of the cells of an unknown under given parities; null where none keeps the limits. */
  readonly best: (unknown: number, parities: readonly number[]) => RankedBowing | null;
}

/** Makes a solver for cells that share an unknown. It keeps its results. */
function unknownSolver(context: BowingContext, cut: TuneCells, way: Way): UnknownSolver {
  const played = new Map<number, (typeof cut.played)[number][]>();
  for (const span of cut.played) {
    const { unknown } = at(cut.cells, span.cell);
    if (unknown === null) continue;
    const spans = played.get(unknown);
    if (spans) spans.push(span);
    else played.set(unknown, [span]);
  }
  const models = new Map(
    [...played].map(([unknown, spans]) => {
      const { from, end } = at(spans, 0);
      const model = wayModel(context, way, from, end);
      const copies = new Set(spans.map(s => s.cell)).size;
      return [unknown, { model, free: laidFreely(model), spans, copies }] as const;
    }),
  );
  const modelOf = (unknown: number) => {
    const found = models.get(unknown);
    if (!found) throw new Error(`no cell has unknown ${unknown}`);
    return found;
  };
  const solved = new Map<string, RankedBowing | null>();
  return {
    modelOf,
    best: (unknown, parities) => {
      if (!models.has(unknown)) return { bowing: [], cost: noCost };
      const { model, free, spans, copies } = modelOf(unknown);
      const upAt = ({ start }: (typeof spans)[number]): number =>
        start.of.reduce((up, u) => up ^ at(parities, u), start.up);
      const ups =
        way.preset.strongBeat === null ? 0 : spans.reduce((sum, span) => sum + upAt(span), 0);
      const parity = at(parities, unknown);
      const key = `${unknown} ${parity} ${ups}`;
      const known = solved.get(key);
      if (known !== undefined) return known;
      const form = { ...model.form, arrive: strokeDirection('down', parity) };
      const terms = wayTerms(model, free, { downs: spans.length - ups, ups, copies });
      const found = bestBy({ ...form, written: free }, 1, terms)[0] ?? null;
      solved.set(key, found);
      return found;
    },
  };
}

interface SetBowing {
  readonly cost: Cost;
  readonly parities: readonly number[];
  readonly bowings: ReadonlyMap<number, RankedBowing>;
}

function bestOfSet(
  one: readonly number[],
  free: readonly (readonly number[])[],
  set: ReadonlySet<number>,
  solver: UnknownSolver,
): SetBowing | null {
  let best: SetBowing | null = null;
  const parities = [...one];
  for (let choice = 0; choice < 2 ** free.length; choice++) {
    for (const u of set) {
      parities[u] = free.reduce(
        (p, vector, f) => ((choice >> f) & 1 ? p ^ at(vector, u) : p),
        at(one, u),
      );
    }
    let cost: Cost | null = noCost;
    const bowings = new Map<number, RankedBowing>();
    for (const u of set) {
      const found = solver.best(u, parities);
      if (!found) {
        cost = null;
        break;
      }
      cost = addCost(cost, found.cost);
      bowings.set(u, found);
    }
    if (cost && (!best || compareCost(cost, best.cost) < 0)) {
      best = { cost, parities: [...parities], bowings };
    }
  }
  return best;
}
