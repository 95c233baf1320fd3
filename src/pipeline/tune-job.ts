import type { Block, BlockOf, Book, BookSettings, StudiedBlocks, TuneBlock } from '../read/book.ts';

/** A tune of the book with all that the book says of it: the same job gives the same product. */
export interface TuneJob {
  readonly block: TuneBlock;
  /** The blocks of any page that its study answers. */
  readonly asks: StudiedBlocks;
  readonly settings: BookSettings;
  readonly isPrivate: boolean;
}

/** Every tune of the book, in its order, with the blocks of any page that its study answers. */
export function tuneJobs(book: Book, isPrivate: boolean): readonly TuneJob[] {
  const { settings } = book;
  const blocks = [...book.lessons, ...book.tunePages, ...book.pages].flatMap(p => p.blocks);
  const about = new Map<string, Block[]>();
  for (const block of blocks) {
    for (const id of block.about) {
      const known = about.get(id);
      if (known) known.push(block);
      else about.set(id, [block]);
    }
  }
  return blocks
    .filter(block => block.kind === 'tune')
    .map(block => ({ block, asks: studiedBlocks(about.get(block.id) ?? []), settings, isPrivate }));
}

/** The blocks that a study answers, each kind that is declared so in its spec. */
function studiedBlocks(blocks: readonly Block[]): StudiedBlocks {
  const of = <K extends keyof StudiedBlocks>(kind: K) =>
    blocks.filter((b): b is BlockOf<K> => b.kind === kind);
  return { anchor: of('anchor'), plan: of('plan'), clip: of('clip'), drill: of('drill') };
}
