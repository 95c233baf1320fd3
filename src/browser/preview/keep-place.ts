/** Loads the page anew and comes back to where the reader was in it. */
interface Place {
  readonly path: string;
  readonly x: number;
  readonly y: number;
  /** Which folded parts were open, in order. */
  readonly open: readonly boolean[];
}

const key = 'bowbook.preview.place';

export function reloadHere(): void {
  const open = [...document.querySelectorAll('main details')].map(
    d => (d as HTMLDetailsElement).open,
  );
  const place: Place = { path: location.pathname, x: scrollX, y: scrollY, open };
  sessionStorage.setItem(key, JSON.stringify(place));
  location.reload();
}

/**
 * Goes back to where `reloadHere` was called, if it was on this page. The page still grows while its
 * scripts and pictures come, so it is done once more when all is there, unless the reader has moved.
 */
export function returnHere(): void {
  const kept = sessionStorage.getItem(key);
  sessionStorage.removeItem(key);
  if (kept === null) return;
  const place = JSON.parse(kept) as Place;
  if (place.path !== location.pathname) return;
  history.scrollRestoration = 'manual';
  let isMoved = false;
  const go = (): void => {
    const folds = [...document.querySelectorAll<HTMLDetailsElement>('main details')];
    if (folds.length === place.open.length) {
      folds.forEach((fold, i) => {
        fold.open = place.open[i] ?? false;
      });
    }
    scrollTo(place.x, place.y);
  };
  for (const moving of ['wheel', 'touchmove', 'keydown', 'pointerdown']) {
    addEventListener(
      moving,
      () => {
        isMoved = true;
      },
      { once: true, passive: true },
    );
  }
  go();
  addEventListener('load', () => {
    if (!isMoved) go();
    history.scrollRestoration = 'auto';
  });
}
