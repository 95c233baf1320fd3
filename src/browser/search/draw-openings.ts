/**
 * Draws the opening of each listed tune when its line comes near the screen. The drawings are the
 * build's own, fifty tunes to a script, each script fetched once and only when one of its tunes is
 * seen.
 */
interface OpeningsFile {
  /** Glyphs by id, as `<symbol>`s. */
  readonly glyphs: Readonly<Record<string, string>>;
  readonly tunes: Readonly<Record<string, readonly [prelude: string, music: string]>>;
}

declare global {
  interface Window {
    bowbookOpenings?: (file: OpeningsFile) => void;
  }
}

const drawings = new Map<string, readonly [string, string]>();
const fetched = new Map<string, Promise<void>>();

/** Watches list items that carry `data-tune` and `data-openings`; call it for each new one. */
export function drawOpenings(items: Iterable<HTMLElement>): void {
  for (const item of items) watcher.observe(item);
}

const watcher = new IntersectionObserver(
  seen => {
    for (const { isIntersecting, target } of seen) {
      if (!isIntersecting || !(target instanceof HTMLElement)) continue;
      watcher.unobserve(target);
      const { tune, openings } = target.dataset;
      if (tune && openings) fetchFile(openings).then(() => draw(target, tune));
    }
  },
  { rootMargin: '400px' },
);

function fetchFile(file: string): Promise<void> {
  const known = fetched.get(file);
  if (known) return known;
  const coming = new Promise<void>(resolve => {
    const script = document.createElement('script');
    script.src = file;
    script.onload = script.onerror = () => resolve(); // without it the letters stand as they are
    document.head.append(script);
  });
  fetched.set(file, coming);
  return coming;
}

window.bowbookOpenings = ({ glyphs, tunes }) => {
  const symbols = document.querySelector('.symbols defs');
  for (const [id, symbol] of Object.entries(glyphs)) {
    if (!document.getElementById(id)) symbols?.insertAdjacentHTML('beforeend', symbol);
  }
  for (const [id, drawing] of Object.entries(tunes)) drawings.set(id, drawing);
};

function draw(item: HTMLElement, tune: string): void {
  const drawing = drawings.get(tune);
  if (!drawing || item.querySelector('.opening-staff')) return;
  const [staff, line, stave] = ['notation opening-staff', 'line', 'stave'].map(name => {
    const made = document.createElement('div');
    made.className = name;
    return made;
  });
  if (!staff || !line || !stave) return;
  // The build's own drawings: nothing that a reader typed goes in here.
  for (const svg of drawing) stave.insertAdjacentHTML('beforeend', svg);
  line.append(stave);
  staff.append(line);
  item.append(staff);
}
