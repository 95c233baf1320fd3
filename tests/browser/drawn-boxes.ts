/** What is measured of a drawing in the browser. In one function, which is sent to the page. */
export interface DrawnBox {
  readonly kind: string;
  readonly what: string;
  /** Index of the event that it belongs to; -1 for none. */
  readonly event: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A line of drawings, its boxes in window pixels. */
export interface DrawnLine {
  readonly name: string;
  /** One staff space. */
  readonly space: number;
  readonly boxes: readonly DrawnBox[];
}

/**
 * Boxes of the ink on each line of the page: heads, accidentals, stroke signs, fingers, letters, chord
 * symbols, endings, letters of parts and phrases. Text counts from its tallest figure to its base
 * line, or to its tails where it has any.
 */
export function drawnLines(): readonly DrawnLine[] {
  const probe = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  document.body.append(probe);
  const sizes = new Map<string, DOMRect>();
  const sizeOf = (id: string): DOMRect => {
    const known = sizes.get(id);
    if (known) return known;
    const use = document.createElementNS('http://www.w3.org/2000/svg', 'use');
    use.setAttribute('href', `#${id}`);
    probe.append(use);
    const box = use.getBBox();
    sizes.set(id, box);
    return box;
  };
  const eventOf = (e: Element): number =>
    Number(e.closest('[data-n]')?.getAttribute('data-n') ?? '-1');
  const mapped = (e: SVGGraphicsElement, x: number, y: number, w: number, h: number) => {
    const m = e.getScreenCTM();
    if (!m) throw new Error('not on the page');
    const [a, b] = [new DOMPoint(x, y), new DOMPoint(x + w, y + h)].map(p => p.matrixTransform(m));
    if (!a || !b) throw new Error('no points');
    return { left: a.x, right: b.x, top: a.y, bottom: b.y };
  };
  const glyph = (use: SVGUseElement, kind: string, id: string): DrawnBox => {
    const s = sizeOf(id);
    const [x, y] = [use.x.baseVal.value, use.y.baseVal.value];
    const box = mapped(use, x + s.x, y + s.y, s.width, s.height);
    return { kind, what: id, event: eventOf(use), ...box };
  };
  const letters = (text: SVGTextElement, kind: string, each: boolean): DrawnBox[] => {
    const size = Number.parseFloat(getComputedStyle(text).fontSize);
    const content = text.textContent ?? '';
    const box = (from: number, to: number): DrawnBox => {
      const [start, end] = [text.getStartPositionOfChar(from), text.getEndPositionOfChar(to)];
      const tail = /[gjpqy,]/.test(content.slice(from, to + 1)) ? 0.22 * size : 0;
      const ink = mapped(text, start.x, start.y - 0.74 * size, end.x - start.x, 0.74 * size + tail);
      return { kind, what: content.slice(from, to + 1), event: -1, ...ink };
    };
    if (!each) return content === '' ? [] : [box(0, text.getNumberOfChars() - 1)];
    return Array.from({ length: text.getNumberOfChars() }, (_, i) => box(i, i));
  };
  const signs = (path: SVGPathElement): DrawnBox[] => {
    const found: { xs: number[]; ys: number[] }[] = [];
    let [x, y] = [0, 0];
    for (const [, c = '', rest = ''] of (path.getAttribute('d') ?? '').matchAll(
      /([Mmhvl])([^Mmhvl]*)/g,
    )) {
      const n = (rest.match(/-?(?:\d+\.?\d*|\.\d+)/g) ?? []).map(Number);
      if (c === 'M') [x, y] = [0, 0];
      if (/m/i.test(c)) {
        [x, y] = [x + (n[0] ?? 0), y + (n[1] ?? 0)];
        found.push({ xs: [x], ys: [y] });
        continue;
      }
      const last = found.at(-1);
      const size = c === 'l' ? 2 : 1;
      for (let i = 0; i < n.length; i += size) {
        const along = n[i] ?? 0;
        if (c === 'h') x += along;
        else if (c === 'v') y += along;
        else [x, y] = [x + along, y + (n[i + 1] ?? 0)];
        last?.xs.push(x);
        last?.ys.push(y);
      }
    }
    const half = 0.9;
    return found.map(({ xs, ys }) => {
      const [left, top] = [Math.min(...xs) - half, Math.min(...ys) - half];
      const [right, bottom] = [Math.max(...xs) + half, Math.max(...ys)];
      return {
        kind: 'mark',
        what: 'sign',
        event: -1,
        ...mapped(path, left, top, right - left, bottom - top),
      };
    });
  };
  const all = <T extends Element>(root: Element, which: string): T[] =>
    [...root.querySelectorAll<T>(which)].filter(
      e => e.getClientRects().length > 0 && e.getBoundingClientRect().width > 0,
    );
  const lines = [...document.querySelectorAll<HTMLElement>('.line')].map((line, l) => {
    const uses = all<SVGUseElement>(line, '.stave-music use');
    const endings = all<SVGPathElement>(line, '.stave-music path[stroke-width=".9"]');
    return {
      name: `${line.closest('section')?.getAttribute('data-title') ?? ''} line ${l}`,
      space: Number.parseFloat(getComputedStyle(line).fontSize),
      boxes: [
        ...uses.flatMap(use => {
          const id = use.getAttribute('href')?.slice(1) ?? '';
          if (/^[NHW]$/.test(id)) return [glyph(use, 'head', id)];
          if (/^[NH][ud]/.test(id)) return [glyph(use, 'head', id[0] ?? '')];
          if (!/^(S|F|Q|SS|FF)$/.test(id)) return [];
          const kind = use.closest('.layer-letters')
            ? 'letter'
            : use.closest('.chord')
              ? 'chord'
              : 'accidental';
          return [glyph(use, kind, id)];
        }),
        ...all<SVGPathElement>(line, '[class^="mark-"]').flatMap(signs),
        ...all<SVGTextElement>(line, '.layer-fingers text').flatMap(t =>
          letters(t, 'finger', true),
        ),
        ...all<SVGTextElement>(line, '.layer-letters text').flatMap(t =>
          letters(t, 'letter', true),
        ),
        ...all<SVGTextElement>(line, '.chord text').flatMap(t => letters(t, 'chord', false)),
        ...all<SVGTextElement>(line, 'text.ending').flatMap(t => letters(t, 'ending', false)),
        ...all<SVGTextElement>(line, '.layer-labels text').flatMap(t => letters(t, 'label', false)),
        ...endings.map(path => {
          const b = path.getBBox();
          return {
            kind: 'ending',
            what: 'bracket',
            event: -1,
            ...mapped(path, b.x, b.y, b.width, 0.9),
          };
        }),
      ],
    };
  });
  probe.remove();
  return lines;
}

/** How far two boxes must run into one another to be seen to, in staff spaces. */
const seen = 0.06;

/**
 * Pairs of boxes that run into one another. Heads and accidentals of one chord stand as engravers
 * set them, in and out of one another's boxes, and are left out.
 */
export function overlapsOf({ name, space, boxes }: DrawnLine): readonly string[] {
  const least = seen * space;
  return boxes.flatMap((a, i) =>
    boxes.slice(i + 1).flatMap(b => {
      const chord = a.event >= 0 && a.event === b.event;
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (chord || across <= least || down <= least) return [];
      const size = `${(across / space).toFixed(2)} by ${(down / space).toFixed(2)} spaces`;
      return [`${name}: ${a.kind} ${a.what} on ${b.kind} ${b.what}, ${size}`];
    }),
  );
}
