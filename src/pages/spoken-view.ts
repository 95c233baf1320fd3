import type { Direction } from '../../shared/music/tune.ts';
import type { Study } from '../../shared/study.ts';
import { siteWords } from '../../shared/words/en/site.ts';
import { type SpokenNote, speakTune } from '../../shared/words/en/spoken.ts';

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

export function spokenView(study: Study): readonly SpokenView[] {
  return speakTune(study).map(part => ({
    name: siteWords.part(part.part),
    bars: part.bars.map(bar => ({
      name: bar.name,
      phrase: bar.phrase,
      heard: `${siteWords.bar(bar.name, bar.phrase)} ${bar.text}`,
      strokes: byStroke(bar.notes),
    })),
  }));
}

function byStroke(notes: readonly SpokenNote[]): readonly SpokenStroke[] {
  const strokes: { direction: Direction | null; notes: SpokenStroke['notes'][number][] }[] = [];
  for (const note of notes) {
    const last = strokes.at(-1);
    const said = { name: note.name, where: note.held ? siteWords.held : whereWords(note) };
    if (note.slurred && last) last.notes.push(said);
    else strokes.push({ direction: note.slurred ? null : note.stroke, notes: [said] });
  }
  return strokes;
}

/** "high 2 on D"; "1 on low A, as if A" on a retuned string; "open D and open A" of a double stop; nothing out of first position. */
function whereWords({ finger, string, asIf }: SpokenNote): string {
  const strings = string?.split(' and ') ?? [];
  const fingers = finger?.split(' and ') ?? [];
  const places = fingers
    .map((f, i) => (f === 'open' ? `open ${strings[i]}` : `${f} on ${strings[i]}`))
    .join(' and ');
  return asIf === null ? places : `${places} (${asIf})`;
}
