import { at } from '../must.ts';
import { kinOf, type Likeness, statedKin } from './kin-of.ts';
import { familyOfLabel, prime } from './phrase-labels.ts';
import type { PhraseNotes } from './phrase-notes.ts';

/** A phrase's label, and the earlier phrase that it is compared with, null when it is its own. */
export interface NamedPhrase {
  readonly label: string;
  readonly of: number | null;
  readonly likeness: Likeness | null;
}

/** A phrase that is the first with its label. */
interface Form {
  readonly index: number;
  readonly label: string;
  readonly notes: PhraseNotes;
}

/** Forms of one letter, the first counted in: a, a′, a′′ (our own choice: more are not told apart by ear). */
const mostForms = 3;

/**
 * Labels phrases by ear: the next letter for the first of a kind, the same label for the same notes, and a
 * letter with one more prime for any other kin. A letter that has three forms takes no more: the next
 * phrase like them is compared with other families, and else begins one, or a chain of small changes
 * would end in a phrase that has nothing of the first.
 */
export function labelByEar(phrases: readonly PhraseNotes[]): NamedPhrase[] {
  const forms: Form[] = [];
  const primes = new Map<string, number>();
  return phrases.map((notes, index): NamedPhrase => {
    const known = forms.find(f => f.notes.text === notes.text);
    if (known) return { label: known.label, of: known.index, likeness: kinOf(notes, known.notes) };
    const open = forms.filter(f => (primes.get(familyOfLabel(f.label)) ?? 0) < mostForms - 1);
    const near = nearestKin(notes, open, kinOf);
    const letter = near ? familyOfLabel(near.form.label) : letterText(primes.size);
    const count = near ? (primes.get(letter) ?? 0) + 1 : 0;
    primes.set(letter, count);
    const label = letter + prime.repeat(count);
    forms.push({ index, label, notes });
    return { label, of: near?.form.index ?? null, likeness: near?.likeness ?? null };
  });
}

/**
 * Labels phrases as the teacher states, one label a phrase. A phrase is compared with the first of its label, or else with
 * the nearest earlier one of its letter; where the notes of the two have nothing in common, it
 * is `varied`, since the teacher hears one in the other. A new letter is a phrase of its own,
 * whatever its notes.
 */
export function labelAsStated(
  phrases: readonly PhraseNotes[],
  labels: readonly string[],
): NamedPhrase[] {
  const forms: Form[] = [];
  return phrases.map((notes, index): NamedPhrase => {
    const label = at(labels, index);
    const same = forms.find(f => f.label === label);
    const family = forms.filter(f => familyOfLabel(f.label) === familyOfLabel(label));
    const near = nearestKin(notes, same ? [same] : family, statedKin);
    if (!same) forms.push({ index, label, notes });
    return { label, of: near?.form.index ?? null, likeness: near?.likeness ?? null };
  });
}

/** The form that differs at the fewest places, the earliest of equals; a moved one as a last resort. */
function nearestKin(
  notes: PhraseNotes,
  forms: readonly Form[],
  compare: (a: PhraseNotes, b: PhraseNotes) => Likeness | null,
): { readonly form: Form; readonly likeness: Likeness } | null {
  let best: { form: Form; likeness: Likeness } | null = null;
  /** A moved phrase differs at every place, but is nearer than no kin: after all that are not. */
  const rank = (l: Likeness): number => (l.kin === 'moved' ? 1e6 : 0) + l.differing;
  for (const form of forms) {
    const likeness = compare(notes, form.notes);
    if (likeness && (!best || rank(likeness) < rank(best.likeness))) best = { form, likeness };
  }
  return best;
}

/** a to z, then aa, ab. */
function letterText(n: number): string {
  const last = String.fromCharCode(97 + (n % 26));
  return n < 26 ? last : letterText(Math.floor(n / 26) - 1) + last;
}
