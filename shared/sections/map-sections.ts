/**
 * The section map: which phrases of a tune are the same, which are forms of another, and in which
 * order a learner needs them.
 *
 * The tune is cut into phrases (`phrase-bars.ts`), each is read as places and pitches
 * (`phrase-notes.ts`) and compared with those before it (`kin-of.ts`). The first of a kind gets the
 * next letter; a phrase that is the same as an earlier one gets that one's label; any other kin gets
 * the letter of the phrase that it differs from at the fewest places, with one more prime than the
 * last form of that letter. So equal labels mean equal notes, and equal letters mean kin.
 *
 * Sixteen bars in twos, `X Y X Z | X' Y W Z`, where X' is X with its second bar changed:
 *
 *   label  a b a c | a′ b d c       kin  own own same own | ending same own same
 *
 * To learn: a, b, c, a′, d. Three of eight come free.
 */
import type { Tune } from '../music/tune.ts';
import { longPhraseOf } from './crooked-parts.ts';
import { findForks } from './find-forks.ts';
import { kinOf, type Likeness } from './kin-of.ts';
import { type PhraseBars, phraseBars } from './phrase-bars.ts';
import { type PhraseNotes, phraseReader } from './phrase-notes.ts';
import type { Phrase, SectionMap } from './section-map.ts';

/** Bars a phrase, unless the teacher says otherwise: four in waltzes, else two (common practice). */
export function usualUnit(tune: Tune): number {
  const { beats, unit } = tune.meter;
  const waltz = tune.type === 'waltz' || (tune.type === null && beats === 3 && unit === 4);
  return waltz ? 4 : 2;
}

/** Maps a tune; `unit` is the bars a phrase, null or left out for the usual. */
export function mapSections(tune: Tune, unit: number | null = null): SectionMap {
  const bars = unit ?? usualUnit(tune);
  const read = phraseReader(tune);
  const forms: Form[] = [];
  const letters: number[] = [];
  const long = longPhraseOf(tune, bars, read);
  const phrases = phraseBars(tune, bars, long).map((cut, index): Phrase => {
    const notes = read(cut.heard);
    const known = forms.find(f => f.notes.text === notes.text);
    if (known) return phraseOf(tune, cut, known.label, known.index, sameAs);
    const near = nearestKin(notes, forms);
    const letter = near ? near.form.letter : letters.length;
    letters[letter] = near ? (letters[letter] ?? 0) + 1 : 0;
    const label = letterText(letter) + '′'.repeat(letters[letter] ?? 0);
    forms.push({ index, letter, label, notes });
    return phraseOf(tune, cut, label, near?.form.index ?? null, near?.likeness ?? null);
  });
  return { unit: bars, phrases, forks: findForks(tune, phrases), toLearn: toLearn(tune, phrases) };
}

/** A phrase that is the first with its notes. */
interface Form {
  readonly index: number;
  readonly letter: number;
  readonly label: string;
  readonly notes: PhraseNotes;
}

const sameAs: Likeness = { kin: 'same', differing: 0, firstDifference: null };

/** The form that differs at the fewest places, the earliest of equals; a moved one as a last resort. */
function nearestKin(
  notes: PhraseNotes,
  forms: readonly Form[],
): { readonly form: Form; readonly likeness: Likeness } | null {
  let best: { form: Form; likeness: Likeness } | null = null;
  const rank = (l: Likeness): number => (l.kin === 'moved' ? 1e6 : 0) + l.differing;
  for (const form of forms) {
    const likeness = kinOf(notes, form.notes);
    if (likeness && (!best || rank(likeness) < rank(best.likeness))) best = { form, likeness };
  }
  return best;
}

function phraseOf(
  tune: Tune,
  cut: PhraseBars,
  label: string,
  of: number | null,
  likeness: Likeness | null,
): Phrase {
  const bars = cut.written.map(i => tune.bars[i]);
  const full = bars.filter(b => b && !b.pickup);
  const named = full.length > 0 ? full : bars;
  const ends = [named[0]?.name ?? '', named.at(-1)?.name ?? ''];
  return {
    bars: cut.written,
    name: [...new Set(ends)].join('-'),
    part: cut.part,
    first: bars[0]?.first ?? 0,
    end: bars.at(-1)?.end ?? 0,
    label,
    kin: likeness?.kin ?? 'own',
    of,
    firstDifference: likeness?.firstDifference ?? null,
  };
}

/** a to z, then aa, ab. */
function letterText(n: number): string {
  const last = String.fromCharCode(97 + (n % 26));
  return n < 26 ? last : letterText(Math.floor(n / 26) - 1) + last;
}

/** The phrases that are not the same as an earlier one, in the order in which the parts are played. */
function toLearn(tune: Tune, phrases: readonly Phrase[]): number[] {
  const order = [...new Set([...(tune.order ?? []), ...tune.parts.keys()])];
  const first = new Map<string, number>();
  for (const part of order) {
    phrases.forEach((p, i) => {
      if (p.part === part && !first.has(p.label)) first.set(p.label, i);
    });
  }
  return [...first.values()];
}
