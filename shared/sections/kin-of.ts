/**
 * How one phrase stands to another.
 *
 * Both are lists of places with a pitch, as `phrase-notes.ts` reads them. They differ at a place
 * where only one of them begins a note, or where the pitches differ; so a held note against the same
 * note repeated differs at one place. Then:
 *
 *   same     they differ nowhere, and have as many bars
 *   ending   they differ only from half way on
 *   start    they differ only before half way
 *   varied   at most a third of the places differ, or some bar is the same in both; or the same notes,
 *            bar for bar, come in another rhythm, as where dots are reversed
 *   moved    same rhythm, and every note the same distance away: in semitones or in staff steps
 *
 * A first half with one or two notes in it that differ is a variation rather than another start.
 * Two notes in common are wanted, or a whole bar: that both begin on D is no kinship.
 *
 * In twos, `GABc d2BG | ABcA G4` and `GABc d2BG | cBAF G4`: they differ from the second bar on,
 * at four places of eleven, so the second is an `ending` form of the first.
 */
import { at } from '../must.ts';
import type { PhraseNote, PhraseNotes } from './phrase-notes.ts';
import type { Kin } from './section-map.ts';

export interface Likeness {
  readonly kin: Exclude<Kin, 'own'>;
  /** Places at which they differ. */
  readonly differing: number;
  /** Event, in the first phrase given, of the first note that differs; null where none does. */
  readonly firstDifference: number | null;
}

/** Kinship of `a` to `b` by ear; null where there is none. */
export function kinOf(a: PhraseNotes, b: PhraseNotes): Likeness | null {
  const kin = statedKin(a, b);
  return kin.heard ? kin : null;
}

/**
 * Kinship of `a` to `b` that a teacher states: as by ear, and `varied` where the ear finds none.
 * `heard` tells the two apart.
 */
export function statedKin(a: PhraseNotes, b: PhraseNotes): Likeness & { readonly heard: boolean } {
  if (a.text === b.text) return { kin: 'same', differing: 0, firstDifference: null, heard: true };
  const places = alignNotes(a.notes, b.notes);
  const differing = places.filter(differ);
  const [first] = differing;
  const kin = kinBy(a, b, places, differing);
  return {
    kin: kin ?? 'varied',
    differing: differing.length,
    firstDifference: first ? noteAt(a, first) : null,
    heard: kin !== null,
  };
}

/** A place at which a note of either phrase begins, and the notes that do. */
interface PlacePair {
  readonly at: number;
  readonly bar: number;
  readonly a: PhraseNote | undefined;
  readonly b: PhraseNote | undefined;
}

const differ = ({ a, b }: PlacePair): boolean => a?.midi !== b?.midi || a?.held !== b?.held;

/** The places of both phrases in order, those of both taken together. */
function alignNotes(a: readonly PhraseNote[], b: readonly PhraseNote[]): PlacePair[] {
  const places: PlacePair[] = [];
  let [i, j] = [0, 0];
  for (;;) {
    const [x, y] = [a[i], b[j]];
    const next = x && y ? (x.at <= y.at ? x : y) : (x ?? y);
    if (!next) return places;
    const { at, bar } = next;
    places.push({ at, bar, a: x?.at === at ? x : undefined, b: y?.at === at ? y : undefined });
    if (x?.at === at) i++;
    if (y?.at === at) j++;
  }
}

/** Kinship by the definitions above, of phrases that are not the same; null for none. */
function kinBy(
  a: PhraseNotes,
  b: PhraseNotes,
  places: readonly PlacePair[],
  differing: readonly PlacePair[],
): Likeness['kin'] | null {
  if (differing.length > 0 && sameInOtherRhythm(a, b)) return 'varied';
  const half = Math.min(a.half, b.half);
  const barShared = sharesBar(places);
  const shared = places.length - differing.length;
  const [first, last] = [differing[0], differing.at(-1)];
  if (shared >= 2 || barShared) {
    if (!first || !last || first.at >= half) return 'ending';
    if (last.at < half && a.bars === b.bars) return differing.length <= 2 ? 'varied' : 'start';
    if (barShared || differing.length * 3 <= places.length) return 'varied';
  }
  return movedFrom(a, b) ? 'moved' : null;
}

/** The same notes in the same bars, at other places. Three at least: any scale has the same one or two. */
const sameInOtherRhythm = (a: PhraseNotes, b: PhraseNotes): boolean =>
  a.bars === b.bars &&
  a.notes.length >= 3 &&
  a.notes.length === b.notes.length &&
  a.notes.every((x, i) => {
    const y = at(b.notes, i);
    return x.midi === y.midi && x.bar === y.bar && x.held === y.held;
  });

/** Whether some bar is the same in both, at the same place, and has a note in it. */
function sharesBar(places: readonly PlacePair[]): boolean {
  const [sounding, unlike] = [new Set<number>(), new Set<number>()];
  for (const p of places) (differ(p) ? unlike : sounding).add(p.bar);
  return [...sounding].some(bar => !unlike.has(bar));
}

/** Whether `a` is `b` moved. Three notes at least: any one or two notes are any others, moved. */
function movedFrom(a: PhraseNotes, b: PhraseNotes): boolean {
  if (a.bars !== b.bars || a.notes.length < 3 || a.notes.length !== b.notes.length) return false;
  const [first, other] = [at(a.notes, 0), at(b.notes, 0)];
  const [midi, steps] = [first.midi - other.midi, first.steps - other.steps];
  let [sameMidi, sameSteps] = [true, true];
  for (const [i, x] of a.notes.entries()) {
    const y = at(b.notes, i);
    if (x.at !== y.at || x.held !== y.held) return false;
    sameMidi &&= x.midi - y.midi === midi;
    sameSteps &&= x.steps - y.steps === steps;
  }
  return sameMidi || sameSteps;
}

/**
 * Event of the note of `a` at a place where it differs. Where nothing of `a` begins there, the note
 * before, which is held over it; at the very start, the first. null where `a` has no notes.
 */
function noteAt(a: PhraseNotes, { at: place, a: begins }: PlacePair): number | null {
  const note = begins ?? a.notes.findLast(n => n.at < place) ?? a.notes[0];
  return note?.event ?? null;
}
