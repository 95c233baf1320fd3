import {
  add,
  type Fraction,
  fraction,
  fromFloat,
  multiply,
  zero,
} from '../../shared/music/fraction.ts';
import { isCompound, meterLength } from '../../shared/music/meter.ts';
import { type Letter, letters, type Pitch, pitch } from '../../shared/music/pitch.ts';
import type { Key, Meter } from '../../shared/music/tune.ts';
import type { RawElement, RawPitch, RawTune } from './abcjs-parse.ts';
import { alterOf, readKey, readMeter } from './read-key.ts';

/**
 * Walks abcjs's elements in the order of the page and gathers them into bars. What a bar is called
 * and which part it belongs to comes later (`nameBars`); here are its notes, exact, and the signs
 * at its edges.
 *
 * An accidental holds for its letter, in every octave, until the bar line (`propagate-accidentals`,
 * whose default is `pitch`: ABC 2.1, section 11.3), and past it only for the note that a tie leads
 * to: in `^f-|f f` the first f of the second bar is sharp, the next is not.
 */
export interface DraftBar {
  readonly meter: Meter;
  readonly key: Key;
  readonly events: readonly DraftEvent[];
  readonly length: Fraction;
  readonly opensRepeat: boolean;
  readonly closesRepeat: number;
  readonly closesPart: boolean;
  /** Times through that an ending is for, where one begins at this bar. */
  readonly opensEnding: readonly number[] | null;
  /** An ending that holds at this bar stops after it. */
  readonly closesEnding: boolean;
  /** `P:` that stands before this bar. */
  readonly partName: string | null;
  /** A real bar line stands at its end, not only the start of an ending. */
  readonly closed: boolean;
  /** Offset in the text that abcjs was given. */
  readonly start: number;
}

export interface DraftEvent {
  readonly raw: RawElement;
  readonly rest: boolean;
  readonly onset: Fraction;
  readonly duration: Fraction;
  readonly pitches: readonly Pitch[];
  readonly graces: readonly Pitch[];
  readonly tuplet: { readonly p: number; readonly opens: boolean } | null;
  /** Offsets in the text that abcjs was given, all its signs included. */
  readonly start: number;
  readonly stop: number;
  /** Slurs that open before a rest or close after one; notes carry their own. */
  readonly restSlurs: { readonly opened: number; readonly closed: number };
  /** A pitch altered only by a sign in another octave, and what it would be without. */
  readonly elsewhere: { readonly read: Pitch; readonly otherwise: Pitch } | null;
}

interface Open {
  events: DraftEvent[];
  length: Fraction;
  opensRepeat: boolean;
  opensEnding: readonly number[] | null;
  partName: string | null;
  start: number | null;
}

type Propagation = 'octave' | 'pitch' | 'not';

/** Bars of the first voice. `abc` is the text that abcjs was given. */
export function collectBars(tune: RawTune, abc: string): readonly DraftBar[] {
  const bars: DraftBar[] = [];
  const propagation = propagationOf(abc);
  let key = readKey(undefined);
  let meter = readMeter(undefined);
  let barKey = key;
  let barMeter = meter;
  let open = emptyBar();
  let altered = new Map<string, number>();
  let here = new Map<string, number>();
  let octaveShift = 0;
  let reached = 0;
  let tiedFrom = new Map<string, number>();
  let tuplet: { p: number; ratio: Fraction; begun: boolean } | null = null;

  const close = (line: RawElement | null): void => {
    if (open.events.length > 0) {
      bars.push({
        meter: barMeter,
        key: barKey,
        events: open.events,
        length: open.length,
        opensRepeat: open.opensRepeat,
        opensEnding: open.opensEnding,
        partName: open.partName,
        start: open.start ?? 0,
        closesRepeat: 1,
        closesPart: false,
        closesEnding: false,
        closed: line !== null && line.type !== 'bar_invisible',
      });
      open = emptyBar();
    }
    if (line) markEdges(line);
  };

  const markEdges = (line: RawElement): void => {
    const sign = signOf(line, abc);
    const last = bars.pop();
    if (last) {
      bars.push({
        ...last,
        closed: last.closed || line.type !== 'bar_invisible',
        closesRepeat: Math.max(last.closesRepeat, sign.closesRepeat),
        closesPart: last.closesPart || /thin_thin|thick/.test(line.type ?? ''),
        closesEnding: last.closesEnding || line.endEnding === true,
      });
    }
    if (sign.opensRepeat) open.opensRepeat = true;
    if (line.startEnding) open.opensEnding = endingNumbers(line.startEnding);
  };

  const place = (event: DraftEvent): void => {
    if (open.events.length === 0) {
      barKey = key;
      barMeter = meter;
      open.start = event.start;
    }
    open.events.push(event);
    open.length = add(open.length, event.duration);
  };

  const sound = (p: RawPitch): Pitch => {
    const { letter, octave, name } = spell(p, octaveShift);
    const written = p.accidental === undefined ? undefined : alterOf[p.accidental];
    const reach = propagation === 'pitch' ? letter : name;
    const alter = written ?? tiedFrom.get(name) ?? altered.get(reach) ?? key.alters[letter];
    if (written !== undefined && propagation !== 'not') {
      altered.set(reach, written);
      here.set(name, written);
    }
    return pitch(letter, alter, octave);
  };

  /** abcjs leaves out of a note what stands before its last sign: `"G"u(` of `"G"u(~B2`. */
  const spanOf = (raw: RawElement): Pick<DraftEvent, 'start' | 'stop' | 'restSlurs'> => {
    const [start, stop] = [raw.startChar ?? 0, raw.endChar ?? 0];
    const before = abc.slice(Math.min(reached, start), start).split('\n').at(-1) ?? '';
    const signs = signsOnly.exec(before)?.[0].length ?? 0;
    const text = abc.slice(start - signs, stop);
    const inRest = raw.rest !== undefined;
    return {
      start: start - signs + (text.length - text.trimStart().length),
      stop: start - signs + text.trimEnd().length,
      restSlurs: {
        opened: inRest ? (text.match(/\((?!\d)/g)?.length ?? 0) : 0,
        closed: inRest ? (raw.endSlur?.length ?? 0) : 0,
      },
    };
  };

  /** The reading of players who take an accidental for its own octave only, where it differs. */
  const elsewhere = (p: RawPitch, read: Pitch): DraftEvent['elsewhere'] => {
    const { letter, octave, name } = spell(p, octaveShift);
    if (p.accidental !== undefined || tiedFrom.has(name)) return null;
    const otherwise = pitch(letter, here.get(name) ?? key.alters[letter], octave);
    return otherwise.midi === read.midi ? null : { read, otherwise };
  };

  const note = (raw: RawElement): void => {
    if (raw.startTriplet) {
      tuplet = { p: raw.startTriplet, ratio: tupletRatio(raw, abc, meter), begun: false };
    }
    const length = fromFloat(raw.duration ?? 0);
    const graces = (raw.gracenotes ?? []).map(sound);
    const sounded = (raw.pitches ?? []).map(p => {
      const at = sound(p);
      return { tied: p.startTie !== undefined, at, elsewhere: elsewhere(p, at) };
    });
    const pitches = sounded.map(s => s.at).sort((a, b) => a.midi - b.midi);
    tiedFrom = new Map(
      sounded.filter(s => s.tied).map(({ at }) => [`${at.letter}${at.octave}`, at.alter]),
    );
    place({
      ...spanOf(raw),
      raw,
      rest: raw.rest !== undefined || pitches.length === 0,
      onset: open.length,
      duration: tuplet ? multiply(length, tuplet.ratio) : length,
      pitches,
      graces,
      tuplet: tuplet ? { p: tuplet.p, opens: !tuplet.begun } : null,
      elsewhere: sounded.find(s => s.elsewhere)?.elsewhere ?? null,
    });
    if (tuplet) tuplet.begun = true;
    if (raw.endTriplet) tuplet = null;
  };

  for (const line of tune.lines) {
    const staff = line.staff?.[0];
    if (!staff) continue;
    octaveShift = clefOctave(staff.clef?.type);
    if (staff.key) key = readKey(staff.key);
    if (staff.meter) meter = readMeter(staff.meter);
    for (const raw of staff.voices[0] ?? []) {
      if (raw.el_type === 'key') key = readKey(raw);
      else if (raw.el_type === 'meter') meter = readMeter(raw);
      else if (raw.el_type === 'part') {
        close(null);
        open.partName = raw.title ?? null;
      } else if (raw.el_type === 'bar') {
        close(raw);
        if (raw.type !== 'bar_invisible') [altered, here] = [new Map(), new Map()];
      } else if (raw.el_type === 'note') {
        const silence = raw.rest?.type ?? '';
        if (silence === 'spacer') continue;
        const full = meterLength(meter);
        if (/multimeasure/.test(silence) && full) {
          // `Z2` is two bars, though no bar line is written between them.
          for (let i = 0; i < (raw.rest?.text ?? 1); i++) {
            if (i > 0) close(null);
            place({ ...spanOf(raw), ...silent(raw), onset: zero, duration: full });
          }
        } else note(raw);
      }
      reached = Math.max(reached, raw.endChar ?? 0);
    }
  }
  close(null);
  return bars;
}

/** Chord symbols, decorations, graces, slurs and tuplets, to the end of the text. */
const signsOnly = /(?:"[^"]*"|![^!\n]*!|\{[^}]*\}|\((?:\d[:\d]*)?|[.~H-Wh-w]|[ \t])+$/;

const emptyBar = (): Open => ({
  events: [],
  length: zero,
  opensRepeat: false,
  opensEnding: null,
  partName: null,
  start: null,
});

const silent = (
  raw: RawElement,
): Omit<DraftEvent, 'onset' | 'duration' | 'start' | 'stop' | 'restSlurs'> => ({
  raw,
  rest: true,
  pitches: [],
  graces: [],
  tuplet: null,
  elsewhere: null,
});

/** Letter and octave of abcjs's staff step, which counts from middle C. */
function spell(p: RawPitch, octaveShift: number): { letter: Letter; octave: number; name: string } {
  const step = p.pitch + 28;
  const letter = letters[((step % 7) + 7) % 7] as Letter;
  const octave = Math.floor(step / 7) + octaveShift;
  return { letter, octave, name: `${letter}${octave}` };
}

/** `clef=treble-8` sounds an octave lower, `+8` an octave higher (ABC 2.1, section 4.6). */
const clefOctave = (clef: string | undefined): number =>
  clef?.endsWith('-8') ? -1 : clef?.endsWith('+8') ? 1 : 0;

/**
 * What a tuplet multiplies lengths by. abcjs is right but for one case: 5, 7 or 9 notes, where `q`
 * is left out, take the time of 3 in compound metres (ABC 2.1, section 4.13), and it says 2.
 */
function tupletRatio(raw: RawElement, abc: string, meter: Meter): Fraction {
  const p = raw.startTriplet ?? 1;
  const written = abc.slice(raw.startChar ?? 0, raw.endChar ?? 0);
  const stated = new RegExp(`\\(${p}:\\d`).test(written);
  const q =
    !stated && (p === 5 || p === 7 || p === 9) && isCompound(meter)
      ? 3
      : Math.round((raw.tripletMultiplier ?? 1) * p);
  return fraction(q, p);
}

/**
 * What a bar line repeats: `:|` closes a stretch played twice, `::|` three times, `::` closes one
 * and opens the next. abcjs reads `::|` as `::` and a bar line.
 */
function signOf(
  line: RawElement,
  abc: string,
): { readonly closesRepeat: number; readonly opensRepeat: boolean } {
  const [start, end] = [line.startChar ?? 0, line.endChar ?? 0];
  const colons = /^[\s[]*(:+)/.exec(abc.slice(start, end))?.[1]?.length ?? 1;
  if (line.type === 'bar_right_repeat') return { closesRepeat: colons + 1, opensRepeat: false };
  if (line.type === 'bar_left_repeat') return { closesRepeat: 1, opensRepeat: true };
  if (line.type !== 'bar_dbl_repeat') return { closesRepeat: 1, opensRepeat: false };
  const thrice = abc.slice(start, end) === '::' && abc[end] === '|';
  return thrice ? { closesRepeat: 3, opensRepeat: false } : { closesRepeat: 2, opensRepeat: true };
}

/** `1,3`, `1-3`, `1,3,5-7`; text such as `[2 last` keeps its number; none reads as 1. */
export function endingNumbers(text: string): readonly number[] {
  const numbers = new Set<number>();
  for (const m of text.matchAll(/(\d+)(?:\s*-\s*(\d+))?/g)) {
    const [from, to] = [Number(m[1]), Number(m[2] ?? m[1])];
    for (let n = from; n <= Math.min(to, from + 20); n++) numbers.add(n);
  }
  return [...numbers].sort((a, b) => a - b);
}

const propagationOf = (abc: string): Propagation =>
  (/^%%propagate-accidentals\s+(octave|pitch|not)\b/m.exec(abc)?.[1] as Propagation | undefined) ??
  'pitch';
