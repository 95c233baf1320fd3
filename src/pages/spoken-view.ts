import type { Study } from '../../shared/study.ts';
import type { SpokenNote } from '../../shared/words/say-tune.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { Html } from './render.ts';
import { strokeSign } from './stroke-sign.ts';

/** A part in words: by stroke to read, and as sentences for screen readers. */
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
  /** Empty where the stroke began in the bar before. */
  readonly sign: Html | '';
  readonly notes: readonly SpokenStop[];
}

interface SpokenStop {
  /** Punctuation between the note before and this one. */
  readonly after: string;
  readonly name: string;
  readonly where: string;
}

/** Describes a tune in words, by part. */
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

function byStroke(notes: readonly SpokenNote[], words: Words): readonly SpokenStroke[] {
  const strokes: { sign: Html | ''; notes: SpokenStop[] }[] = [];
  for (const note of notes) {
    const goesOn = note.slurred ? strokes.at(-1) : undefined;
    const { name } = note;
    const where = note.held ? words.siteWords.held : whereWords(note);
    if (goesOn) {
      goesOn.notes.push({ after: ', ', name, where });
      continue;
    }
    const sign = note.slurred || note.stroke === null ? '' : strokeSign(note.stroke, words);
    strokes.push({ sign, notes: [{ after: '', name, where }] });
  }
  return strokes;
}

/** "high 2 on D"; "1 on low A (as if A)" on a retuned string. */
const whereWords = ({ place, asIf }: SpokenNote): string =>
  asIf === null ? place : `${place} (${asIf})`;
