import { cacheKey } from '../incremental/open-cache.ts';
import type { PageRecipe } from '../pages/make-page.ts';
import type {
  AnchorBlock,
  Block,
  Book,
  BookSettings,
  ClipBlock,
  DrillBlock,
  PlanBlock,
  TuneBlock,
} from '../read/book.ts';

/** A tune of the book with all that the book says of it: the same job gives the same product. */
export interface TuneJob {
  readonly block: TuneBlock;
  readonly anchors: readonly AnchorBlock[];
  readonly plans: readonly PlanBlock[];
  readonly clips: readonly ClipBlock[];
  readonly drills: readonly DrillBlock[];
  readonly settings: BookSettings;
  readonly isPrivate: boolean;
}

/** A tune to be made, with the pages that show it alone. Plain data: any thread can make it. */
export interface TuneTask {
  /** What its work is kept under. */
  readonly key: string;
  readonly job: TuneJob;
  readonly pages: readonly PageTask[];
  /** Other pages or PDFs show it too, so its study and drawings are kept for them. */
  readonly isShared: boolean;
}

export interface PageTask {
  readonly path: string;
  readonly from: string;
  readonly recipe: PageRecipe;
}

/** Every tune of the book, in its order, with the blocks of any page that are about it. */
export function tuneJobs(book: Book, isPrivate: boolean): readonly TuneJob[] {
  const blocks = [...book.lessons, ...book.tunePages, ...book.pages].flatMap(p => p.blocks);
  const of = <K extends Block['kind']>(kind: K) =>
    blocks.filter((b): b is Extract<Block, { kind: K }> => b.kind === kind);
  const anchors = grouped(of('anchor'), a => a.of);
  const plans = grouped(of('plan'), p => p.to);
  const clips = grouped(of('clip'), c => c.of);
  const drills = grouped(of('drill'), d => d.of);
  return of('tune').map(block => {
    const own = anchors.get(block.id) ?? [];
    return {
      block,
      anchors: own,
      plans: own.flatMap(a => plans.get(a.id) ?? []),
      clips: clips.get(block.id) ?? [],
      drills: drills.get(block.id) ?? [],
      settings: book.settings,
      isPrivate,
    };
  });
}

function grouped<T>(things: readonly T[], by: (thing: T) => string): ReadonlyMap<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const group = groups.get(by(thing));
    if (group) group.push(thing);
    else groups.set(by(thing), [thing]);
  }
  return groups;
}

/**
 * What the products of a book's jobs are kept under: a hash of the job, its prose left out, and the
 * program. The settings, which all jobs of the book have, are written out once. `sumOf` is asked for
 * the sum of each block.
 */
export function jobKeys(
  settings: BookSettings,
  program: string,
  sumOf: (block: Block) => string,
): (job: TuneJob) => string {
  const under = cacheKey(program, JSON.stringify(settings));
  return ({ block, anchors, plans, clips, drills, isPrivate }) => {
    const blocks = [block, ...anchors, ...plans, ...clips, ...drills];
    return cacheKey(under, String(isPrivate), ...blocks.map(sumOf));
  };
}

/** Tells one state of a block from another, its prose left out. */
export const blockSum = (block: Block): string =>
  cacheKey(JSON.stringify({ ...block, body: null }));
