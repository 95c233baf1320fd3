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
