import type { Direction } from '../../shared/music/tune.ts';
import type { Study } from '../../shared/study.ts';
import type { SpokenNote } from '../../shared/words/say-tune.ts';
import type { Words } from '../../shared/words/words-for.ts';

/** A part in words: by stroke for the eye, as sentences for the ear. */
export interface SpokenView {
  readonly name: string;
  readonly bars: readonly {
    readonly name: string;
    /** Label of the phrase that begins here. */
    readonly phrase: string | null;
    readonly heard: string;
    readonly strokes: readonly SpokenStroke[];
  }[];
}

interface SpokenStroke {
  /** null where the stroke began in the bar before. */
  readonly direction: Direction | null;
  readonly notes: readonly { readonly name: string; readonly where: string }[];
}

export function spokenView(study: Study, words: Words): readonly SpokenView[] {
  const { siteWords } = words;
  return words.speakTune(study, words.noteNames).map(part => ({
    name: siteWords.part(part.part),
    bars: part.bars.map(bar => ({
      name: bar.name,
      phrase: bar.phrase,
      heard: `${siteWords.bar(bar.name, bar.phrase)} ${bar.text}`,
      strokes: byStroke(bar.notes, words),
    })),
  }));
}

function byStroke(notes: readonly SpokenNote[], { siteWords }: Words): readonly SpokenStroke[] {
  const strokes: { direction: Direction | null; notes: SpokenStroke['notes'][number][] }[] = [];
  for (const note of notes) {
    const last = strokes.at(-1);
    const said = { name: note.name, where: note.held ? siteWords.held : whereWords(note) };
    if (note.slurred && last) last.notes.push(said);
    else strokes.push({ direction: note.slurred ? null : note.stroke, notes: [said] });
  }
  return strokes;
}

/** "high 2 on D"; "1 on low A (as if A)" on a retuned string. */
const whereWords = ({ place, asIf }: SpokenNote): string =>
  asIf === null ? place : `${place} (${asIf})`;
