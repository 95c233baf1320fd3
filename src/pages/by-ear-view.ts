import type { Direction } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';
import { plainLetter } from '../../shared/notation/plain-letter.ts';
import type { Study } from '../../shared/study.ts';
import type { SpokenNote } from '../../shared/words/say-tune.ts';
import type { Words } from '../../shared/words/words-for.ts';

/** A tune without notation: phrase by phrase its letters, fingers, strings and strokes. */
export interface ByEarView {
  readonly words: Words['byEarWords'];
  readonly parts: readonly { readonly name: string; readonly phrases: readonly ByEarPhrase[] }[];
}

interface ByEarPhrase {
  readonly label: string;
  /** Its bars as in the map: `A1-A2`. */
  readonly where: string;
  /** The phrase as sentences, for screen readers. */
  readonly heard: string;
  /** Its bars; a stroke stands in the bar that it begins in. */
  readonly bars: readonly { readonly strokes: readonly EarStroke[] }[];
}

interface EarStroke {
  /** null where the note is never played. */
  readonly direction: Direction | null;
  /** The stroke began in the phrase before. */
  readonly goesOn: boolean;
  readonly notes: readonly { readonly letter: string; readonly where: string }[];
}

/** Describes a tune without notation. `range`: first and last event to show, both included; null for all. */
export function byEarView(
  study: Study,
  range: { readonly first: number; readonly last: number } | null,
  words: Words,
): ByEarView {
  const { tune, map } = study;
  const { siteWords, byEarWords } = words;
  const bars = new Map(
    words.speakTune(study, words.noteNames).flatMap(p => p.bars.map(b => [b.name, b] as const)),
  );
  const shown = (event: number): boolean =>
    range === null || (range.first <= event && event <= range.last);
  const phrases = map.phrases.map(phrase => {
    const own = phrase.bars
      .flatMap(b => bars.get(at(tune.bars, b).name) ?? [])
      .filter(b => b.notes.some(n => shown(n.event)));
    return {
      part: phrase.part,
      label: phrase.label,
      where: phrase.name,
      heard: own.map(b => `${siteWords.bar(b.name, null)} ${b.text}`).join(' '),
      bars: inBars(
        study,
        own.flatMap(b => b.notes),
        words,
      ),
    };
  });
  return {
    words: byEarWords,
    parts: tune.parts.flatMap((part, i) => {
      const own = phrases.filter(p => p.part === i && p.bars.length > 0);
      return own.length === 0 ? [] : [{ name: siteWords.part(part.name), phrases: own }];
    }),
  };
}

/** Notes by bar and stroke; the second note of a tie is left out. */
function inBars(study: Study, notes: readonly SpokenNote[], words: Words): ByEarPhrase['bars'] {
  type Note = EarStroke['notes'][number];
  type Stroke = { direction: Direction | null; goesOn: boolean; notes: Note[] };
  const bars: { bar: number; strokes: Stroke[] }[] = [];
  for (const note of notes) {
    if (note.held) continue;
    const said = letterAndPlace(study, note.event, words);
    const { bar } = at(study.tune.events, note.event);
    const last = bars.at(-1)?.strokes.at(-1);
    if (note.slurred && last) {
      last.notes.push(said);
      continue;
    }
    const stroke = { direction: note.stroke, goesOn: note.slurred, notes: [said] };
    const own = bars.at(-1);
    if (own?.bar === bar) own.strokes.push(stroke);
    else bars.push({ bar, strokes: [stroke] });
  }
  return bars;
}

/** "F♯" and "2 D"; "D A" and "0 D 0 A" for a double stop; no place where first position does not reach. */
function letterAndPlace(
  { tune, tuning, fingering }: Study,
  event: number,
  { stringNames, noteNames }: Words,
): EarStroke['notes'][number] {
  const note = at(tune.events, event);
  const names = stringNames(tuning, noteNames);
  const stops = (fingering[event] ?? []).flatMap(s => (s ? [s] : []));
  return {
    letter: note.kind === 'note' ? note.pitches.map(p => plainLetter(p, noteNames)).join(' ') : '',
    where: stops.map(s => `${s.finger} ${at(names, s.string - 1)}`).join(' '),
  };
}
