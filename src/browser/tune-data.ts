import type { TuneData } from '../../shared/tune-data.ts';

/**
 * Tunes that a page has asked for. Several scripts of one page share them, and a page opened from a
 * folder may not fetch: so each tune is a classic script, `tunes/<id>.js`, whose one call of
 * `bowbookTune` brings it here.
 */
interface TuneShelf {
  (data: TuneData): void;
  readonly tunes: Map<string, TuneData>;
  readonly asked: Map<string, Promise<TuneData>>;
}

const page = globalThis as { bowbookTune?: TuneShelf };

function makeShelf(): TuneShelf {
  const tunes = new Map<string, TuneData>();
  const receive = (data: TuneData): void => {
    tunes.set(data.id, data);
  };
  return Object.assign(receive, { tunes, asked: new Map<string, Promise<TuneData>>() });
}

/**
 * A tune of the book, loaded once a page. `root` is the way back to the site's root, `''` or `'../'`.
 * Rejects where the script cannot be had; asking again then tries again.
 */
export function loadTune(id: string, root: string): Promise<TuneData> {
  page.bowbookTune ??= makeShelf();
  const { tunes, asked } = page.bowbookTune;
  const before = asked.get(id);
  if (before) return before;
  const loading = new Promise<TuneData>((resolve, reject) => {
    const script = document.createElement('script');
    script.src = `${root}tunes/${encodeURIComponent(id)}.js`;
    script.onload = () => {
      const tune = tunes.get(id);
      if (tune) resolve(tune);
      else reject(new Error(`${script.src} holds no tune ${id}`));
    };
    script.onerror = () => reject(new Error(`${script.src} could not be loaded`));
    document.head.append(script);
  });
  asked.set(id, loading);
  loading.catch(() => asked.delete(id));
  return loading;
}
