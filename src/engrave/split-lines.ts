import type { Meter, Tune } from '../../shared/music/tune.ts';
import type { Cell } from './cut-cells.ts';
import type { AbcElement } from './laid-line.ts';

/** A clef, key or metre as abcjs reads it. */
type Sign = Readonly<Record<string, unknown>> & {
  readonly accidentals?: readonly { readonly acc: string }[];
};

/** A tune as abcjs reads it: lines of elements. Of several voices the first is drawn. */
export interface ParsedTune {
  readonly lines: readonly {
    readonly staff?: readonly {
      readonly voices: readonly (readonly AbcElement[])[];
      readonly clef: Sign;
      readonly key: Sign;
      readonly meter?: Sign;
    }[];
  }[];
  readonly formatting: Readonly<Record<string, unknown>>;
  getMeterFraction(): { readonly num: number; readonly den: number };
}

/** One cell's elements, and the signs that stand before it where it begins a line. */
export interface CellLine {
  readonly elements: readonly AbcElement[];
  readonly clef: Sign;
  readonly key: Sign;
  readonly meter: Sign | null;
  /** Event index of each note and rest, by the offset at which abcjs says it starts. */
  readonly events: ReadonlyMap<number, number>;
}

/**
 * Cuts abcjs's elements anew at the edges of the cells, wherever the teacher's own lines end. A bar
 * line stays with the bars that it closes, and a change of key after it, with its naturals: it is then
 * drawn once within a row, and warns at a row's end of the signature that begins the next (common
 * practice of engravers). A sign that opens a repeat, an ending's number, a part's name and a change of
 * metre go with the bars after it.
 */
export function splitLines(
  parsed: ParsedTune,
  tune: Tune,
  cells: readonly Cell[],
): readonly CellLine[] {
  const cellOfBar = new Map(cells.flatMap((cell, i) => cell.bars.map(b => [b, i] as const)));
  const lines: AbcElement[][] = cells.map(() => []);
  const keys: Sign[] = [];
  const events = new Map<number, number>();
  const { elements, clef, key } = joinLines(parsed);
  let running = key;
  let current = 0;
  let gap: AbcElement[] = [];
  let event = 0;
  keys[0] = key;
  for (const element of elements) {
    if (element.el_type === 'tempo') continue;
    if (element.el_type === 'key') running = withoutNaturals(element as unknown as Sign);
    while (
      event < tune.events.length &&
      (tune.events[event]?.stop ?? 0) <= (element.startChar ?? 0)
    )
      event++;
    const found = tune.events[event];
    const sounds = element.el_type === 'note' && element.rest?.type !== 'spacer';
    // What abcjs takes for notes but the tune does not hold, as in a misspelt header, is not drawn.
    if (sounds && (!found || (element.endChar ?? 0) <= found.start)) continue;
    if (!sounds || !found) {
      gap = withSign(gap, element);
      continue;
    }
    const next = cellOfBar.get(found.bar) ?? current;
    if (next > current) {
      const [closing, opening] = cutGap(gap);
      lines[current]?.push(...closing);
      for (let c = current + 1; c <= next; c++) keys[c] = running;
      current = next;
      gap = [...opening];
    }
    // The prelude shows the tune's own key and metre.
    const opening = events.size === 0;
    if (opening) keys[0] = running;
    const signs = opening ? gap.filter(e => !/^(key|meter)$/.test(e.el_type)) : gap;
    events.set(element.startChar ?? -1, event);
    event++;
    lines[current]?.push(...signs, plain(element, tune.source.text.slice(found.start, found.stop)));
    gap = [];
  }
  lines[current]?.push(...gap);
  return lines.map((line, i) => ({
    elements: line,
    clef,
    key: keys[i] ?? key,
    meter: i === 0 ? meterSign(tune.bars[0]?.meter ?? tune.meter) : null,
    events,
  }));
}

/** All elements in one row; a key or metre that changes between two lines stands in it. */
function joinLines(parsed: ParsedTune): {
  elements: readonly AbcElement[];
  clef: Sign;
  key: Sign;
} {
  const staffs = parsed.lines.flatMap(line => (line.staff?.[0] ? [line.staff[0]] : []));
  const first = staffs[0];
  if (!first) throw new Error('abcjs found no music to draw');
  const key = withoutNaturals(first.key);
  let running = accidentals(key);
  const elements: AbcElement[] = [];
  staffs.forEach((staff, i) => {
    const start = staff.voices[0]?.[0]?.startChar ?? 0;
    if (accidentals(withoutNaturals(staff.key)) !== running) {
      elements.push({ ...staff.key, el_type: 'key', startChar: start } as AbcElement);
      running = accidentals(withoutNaturals(staff.key));
    }
    if (i > 0 && staff.meter) {
      elements.push({ ...staff.meter, el_type: 'meter', startChar: start } as AbcElement);
    }
    for (const element of staff.voices[0] ?? []) {
      if (element.el_type === 'key') {
        running = accidentals(withoutNaturals(element as unknown as Sign));
      }
      elements.push(element);
    }
  });
  return { elements, clef: first.clef, key };
}

/** A metre as abcjs draws it; null where there is none. */
function meterSign({ beats, unit, sign, free }: Meter): Sign | null {
  if (free) return null;
  if (sign !== null) return { type: sign === 'cut' ? 'cut_time' : 'common_time' };
  return { type: 'specified', value: [{ num: `${beats}`, den: `${unit}` }] };
}

const accidentals = (key: Sign): string => JSON.stringify(key.accidentals ?? []);

/** A signature as it stands at the start of a line: nothing cancelled. */
const withoutNaturals = (key: Sign): Sign => ({
  ...key,
  accidentals: (key.accidentals ?? []).filter(a => a.acc !== 'natural'),
});

/** What bar lines that meet with no note between them are as one, the strongest last. */
const strengths = [
  'bar_thin',
  'bar_thin_thin',
  'bar_thick_thin',
  'bar_thin_thick',
  'bar_left_repeat',
  'bar_right_repeat',
  'bar_dbl_repeat',
];

/** A gap with one more element. A bar line at a line's end and one at the next line's start are one. */
function withSign(gap: readonly AbcElement[], element: AbcElement): AbcElement[] {
  const before = gap.findIndex(e => e.el_type === 'bar');
  const bar = gap[before];
  if (!bar || element.el_type !== 'bar') return [...gap, element];
  const [a, b] = [bar, element].map(e => strengths.indexOf(e.type ?? '')) as [number, number];
  if (a < 0 || b < 0) return [...gap, element];
  const [weak, strong] = [Math.min(a, b), Math.max(a, b)].map(s => strengths[s]);
  // A double bar before a repeat may end a cell, where the repeat begins the next.
  if (strong === 'bar_left_repeat' && weak !== 'bar_thin') return [...gap, element];
  const turns = strong === 'bar_right_repeat' && weak === 'bar_left_repeat';
  const type = turns ? 'bar_dbl_repeat' : (strong ?? 'bar_thin');
  return gap.with(before, { ...bar, ...element, type });
}

/** Cuts what stands between two cells into what closes the first and what opens the second. */
function cutGap(
  gap: readonly AbcElement[],
): readonly [closing: readonly AbcElement[], opening: readonly AbcElement[]] {
  const at = gap.findIndex(e => e.el_type === 'bar' && e.type !== 'bar_left_repeat');
  const bar = gap[at];
  const keys = gap.slice(at + 1).filter(e => e.el_type === 'key');
  const rest = gap.slice(at + 1).filter(e => e.el_type !== 'key');
  if (!bar) {
    const opens = gap.some(e => e.el_type === 'bar');
    return [[...(opens ? [{ el_type: 'bar', type: 'bar_thin' }] : []), ...keys], rest];
  }
  const { startEnding, ...closing } = bar;
  const opening: AbcElement[] = [];
  if (bar.type === 'bar_dbl_repeat') {
    opening.push({ el_type: 'bar', type: 'bar_left_repeat', ...(startEnding && { startEnding }) });
  } else if (startEnding) {
    opening.push({ el_type: 'bar', type: 'bar_invisible', startEnding });
  }
  const type = bar.type === 'bar_dbl_repeat' ? 'bar_right_repeat' : (bar.type ?? 'bar_thin');
  return [
    [...gap.slice(0, at), { ...closing, type }, ...keys],
    [...opening, ...rest],
  ];
}

const ownMarks = new Set(['upbow', 'downbow', '0', '1', '2', '3', '4', '5']);

/** Rests that abcjs hangs no grace notes on: it would place them nowhere. */
const holdsNoGraces = new Set(['invisible', 'multimeasure', 'invisible-multimeasure']);

/**
 * A note without the strokes and fingers written on it, which we draw ourselves, and a rest that is not
 * drawn without grace notes before it, which are no part of the tune either. `written` is its ABC.
 */
function plain(element: AbcElement, written: string): AbcElement {
  const { gracenotes, rest } = element;
  // abcjs drops what stands on an invisible rest, as a fermata over a bar's end is written; on a space it does not.
  const held = rest?.type === 'invisible' && /!fermata!|H/.test(written);
  const decoration = held ? ['fermata'] : element.decoration;
  const bare = gracenotes !== undefined && holdsNoGraces.has(rest?.type ?? '');
  if (!decoration && !bare) return element;
  return {
    ...element,
    ...(held && { rest: { ...rest, type: 'spacer' } }),
    ...(decoration && { decoration: decoration.filter(d => !ownMarks.has(d)) }),
    ...(bare && { gracenotes: undefined }),
  };
}
