import type { KeyedJob, TuneMaker } from './make-tunes.ts';
import type { SiteFile } from './output/site-file.ts';
import type { BuiltTune } from './pages/built-tune.ts';
import type { TuneNote, TuneProduct } from './tune-product.ts';

/** The tunes of a book during a build: their notes all at once, their products one at a time. */
export interface TuneShelf {
  /** Their ids, in the order of the book. */
  readonly ids: readonly string[];
  /** Notes in the order of the book, each as soon as it and those before it are there. */
  readonly notes: () => AsyncGenerator<TuneNote>;
  /** Everything made of a tune whose note has come. */
  readonly product: (id: string) => Promise<TuneProduct>;
  /** Studies and drawings of some tunes, for a page. */
  readonly shown: (ids: readonly string[]) => Promise<ReadonlyMap<string, BuiltTune>>;
  /** The files that stand beside the page of a tune. */
  readonly files: (note: TuneNote) => readonly SiteFile[];
  /** Tells one state of these tunes from another. */
  readonly state: (ids: readonly string[]) => string;
}

/** `known`: notes that an earlier build made, by key. */
export function tuneShelf(
  jobs: readonly KeyedJob[],
  maker: TuneMaker,
  known: ReadonlyMap<string, TuneNote>,
): TuneShelf {
  const byId = new Map(jobs.map(keyed => [keyed.job.block.id, keyed] as const));
  const product = async (id: string): Promise<TuneProduct> => {
    const keyed = byId.get(id);
    if (!keyed) throw new Error(`there is no tune ${id} in the book`);
    return maker.product(keyed);
  };
  const fileOf = async (id: string, path: string): Promise<string | Uint8Array> => {
    const file = (await product(id)).files.find(f => f.path === path);
    if (!file) throw new Error(`the tune ${id} has no file ${path}`);
    return file.content;
  };
  return {
    ids: [...byId.keys()],
    async *notes() {
      const made = maker.make(jobs.filter(({ key }) => !known.has(key)));
      for (const { key } of jobs) {
        const note = known.get(key) ?? (await made.next()).value;
        if (note) yield note;
      }
    },
    product,
    async shown(ids) {
      const tunes = new Map<string, BuiltTune>();
      for (const id of ids) tunes.set(id, (await product(id)).built);
      return tunes;
    },
    files: ({ id, files }) =>
      files.map(path => ({
        path,
        from: byId.get(id)?.key ?? '',
        make: () => fileOf(id, path),
      })),
    state: ids => ids.map(id => byId.get(id)?.key ?? '').join(' '),
  };
}
