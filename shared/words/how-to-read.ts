import type { NoteNames } from '../music/note-names.ts';
import type { Letter } from '../music/pitch.ts';
import { type SpokenLanguage, spokenLetter } from './spoken.ts';

/** The drawing beside a mark, by its name in `parts/sign` or `parts/legend`; null where there is none. */
type Drawing = 'down' | 'up' | 'slur' | 'own' | 'same' | 'ending' | 'start' | 'varied' | 'moved';

/** Sections of the page that explains the marks, and the marks of each, in order. */
const sections = {
  strokes: { down: 'down', up: 'up', slur: 'slur', lift: null, dot: null },
  alike: { gettingThere: null, bowDiagram: null },
  fingers: { lowAndHigh: null, letters: null },
  bars: { pickup: null, ending: null, notes: null },
  map: {
    own: 'own',
    same: 'same',
    ending: 'ending',
    start: 'start',
    varied: 'varied',
    notch: null,
    moved: 'moved',
  },
  care: { hands: null, ears: null },
} as const satisfies Readonly<Record<string, Readonly<Record<string, Drawing | null>>>>;

/** A text, made of the names of the natural notes where it names some. */
type MarkText = string | ((note: Readonly<Record<Letter, string>>) => string);

export type HowToReadPhrases = {
  readonly [Id in keyof typeof sections]: {
    readonly heading: string;
    readonly lead: string;
    readonly marks: Readonly<Record<keyof (typeof sections)[Id], readonly [string, MarkText]>>;
  };
};

export interface HowToReadLanguage extends SpokenLanguage {
  readonly marks: HowToReadPhrases;
}

export interface MarkExplained {
  readonly sign: Drawing | null;
  readonly name: string;
  readonly text: string;
}

export interface MarksSection {
  readonly id: string;
  readonly heading: string;
  readonly lead: string;
  readonly marks: readonly MarkExplained[];
}

/** The page that explains the marks. */
export function howToRead(language: HowToReadLanguage, names: NoteNames): readonly MarksSection[] {
  const letters = ['C', 'D', 'E', 'F', 'G', 'A', 'B'] as const;
  const notes = Object.fromEntries(
    letters.map(letter => [letter, spokenLetter(language, letter, names)]),
  ) as Record<Letter, string>;
  return Object.entries(sections).map(([id, signs]) => {
    const { heading, lead, marks } = language.marks[id as keyof typeof sections];
    const texts: Readonly<Record<string, readonly [string, MarkText]>> = marks;
    return {
      id,
      heading,
      lead,
      marks: Object.entries(signs).flatMap(([mark, sign]) => {
        const [name, text] = texts[mark] ?? ['', ''];
        return { sign, name, text: typeof text === 'string' ? text : text(notes) };
      }),
    };
  });
}
