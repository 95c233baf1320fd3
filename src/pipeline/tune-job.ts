import type { Block, BlockOf, Book, BookSettings, StudiedBlocks, TuneBlock } from '../read/book.ts';

/** A tune of the book with all that it is made from: equal jobs give equal results. */
export interface TuneJob {
  readonly block: TuneBlock;
  /** The blocks on any page that the study of the tune answers. */
  readonly asks: StudiedBlocks;
  readonly settings: BookSettings;
  readonly isPrivate: boolean;
}

/** The jobs of all tunes, in the order of the book. */
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

/** Sorts out the blocks that a study answers: the kinds whose spec says so. */
function studiedBlocks(blocks: readonly Block[]): StudiedBlocks {
  const of = <K extends keyof StudiedBlocks>(kind: K) =>
    blocks.filter((b): b is BlockOf<K> => b.kind === kind);
  return { anchor: of('anchor'), plan: of('plan'), clip: of('clip'), drill: of('drill') };
}
