import { type Dice, rollDice } from '../../shared/drills/dice.ts';
import { jumble, mutate, pieces } from './mutate.ts';
import type { Seeds } from './seeds.ts';

export const kinds = ['abc', 'markdown', 'settings', 'cues', 'import'] as const;
export type Kind = (typeof kinds)[number];

/** One input: the files of a book by path, and what is done with it. */
export interface Case {
  readonly kind: Kind;
  readonly seed: number;
  readonly number: number;
  readonly files: ReadonlyMap<string, string | Buffer>;
  /** The whole site is built of it, with the PDFs and the zip or without. */
  readonly build: 'none' | 'quick' | 'whole';
}

const settings = 'title: Tried\nrights: traditional\n';

/** The case of that number; the same for the same seed and seeds. */
export function makeCase(kind: Kind, seed: number, number: number, seeds: Seeds): Case {
  const dice = rollDice(`${kind} ${number}`, seed);
  const files = makers[kind](dice, seeds);
  const build = number % 600 === 599 ? 'whole' : number % 120 === 119 ? 'quick' : 'none';
  return { kind, seed, number, files, build };
}

const makers: Readonly<Record<Kind, (dice: Dice, seeds: Seeds) => Case['files']>> = {
  abc(dice, seeds) {
    const abc = madeAbc(dice, seeds);
    // A fence within the text would only end it; the others are of what is written between.
    const page = `:::tune{#tried}\n\`\`\`\`\`abc\n${abc.replaceAll('`````', '')}\n\`\`\`\`\`\n:::\n`;
    return book({ 'tunes/tried.md': page, 'tried.abc': abc });
  },
  markdown(dice, seeds) {
    const own = pieces.markdown;
    const page = (): string =>
      dice.below(5) === 0
        ? jumble(own, dice)
        : mutate(shortened(dice.pick(seeds.pages), dice), own, dice, seeds.pages);
    return book({ 'lessons/2026-09-15-tried.md': page(), 'tunes/tried.md': page() });
  },
  settings(dice, seeds) {
    const own = pieces.yaml;
    const yaml =
      dice.below(5) === 0
        ? jumble(own, dice)
        : mutate(dice.pick(seeds.settings), own, dice, seeds.settings);
    const front = mutate(
      'title: Short\ntype: reel\nrights: own\ntuning: GDAE\n',
      own,
      dice,
      seeds.settings,
    );
    return book({ 'bowbook.yaml': yaml, 'tunes/tried.md': `---\n${front}\n---\n\n${shortTune}` });
  },
  cues(dice) {
    const cues = mutate('A1=0:04 A1/2=0:21 B1=0:38 B2/2,3=1:02.5', cuePieces, dice, cuePieces);
    const bars = mutate('A1:2-B2:3', cuePieces, dice, cuePieces);
    const asked = `::clip[Slow]{src=media/a.mp3 of=short at="${cues}"}\n\n::tune{of=short bars="${bars}"}\n\n:::anchor{#a of=short bars="${bars}" start=${dice.pick(['up', 'down', 'x'])}}\n:::\n\n::plan{to=a}\n\n::drill{kind=${dice.pick(drills)} of=short seed=${dice.below(99)}}\n`;
    return book({
      'tunes/tried.md': shortTune,
      'lessons/2026-09-15-tried.md': asked,
      'media/a.mp3': '',
    });
  },
  import(dice, seeds) {
    const tunes = Array.from({ length: dice.below(4) === 0 ? 2 : 1 }, () =>
      madeAbc(dice, seeds),
    ).join('\n\n');
    const bytes = Buffer.from(tunes, dice.pick(['utf8', 'latin1', 'utf16le'] as const));
    if (dice.below(3) === 0 && bytes.length > 0) bytes[dice.below(bytes.length)] = dice.below(256);
    return book({ 'tunes/short.md': shortTune, 'tried.abc': bytes });
  },
};

const drills = ['call', 'gaps', 'count', 'arrive', 'start', 'same', 'forks', 'into'];

const cuePieces = [
  'A1',
  'B2',
  '/',
  '2',
  '=',
  '0:',
  ':',
  '4',
  '.5',
  ',',
  ' ',
  '-',
  'B0',
  "a'",
  '1e9',
  '"',
  '}',
  '\n',
  '\u0000',
];

const shortTune =
  '```abc\nX:1\nT:Short\nM:2/4\nL:1/8\nK:D\n|:A(B cd)|ef ga:|\n|:b2 af|ed A2:|\n```\n';

const book = (files: Readonly<Record<string, string | Buffer>>): Case['files'] =>
  new Map(Object.entries({ 'bowbook.yaml': settings, ...files }));

function madeAbc(dice: Dice, seeds: Seeds): string {
  const own = pieces.abc;
  if (dice.below(5) === 0) {
    return (
      dice.pick(['', 'X:1\nK:D\n', 'X:1\nT:T\nM:4/4\nL:1/8\nK:D\n', 'P:AB(A2\nK:G\n']) +
      jumble(own, dice)
    );
  }
  return mutate(shortenedTune(dice.pick(seeds.abc), dice), own, dice, seeds.abc);
}

/** Most tunes with their first line or two only, so that many can be tried; one in thirty whole. */
function shortenedTune(abc: string, dice: Dice): string {
  if (dice.below(30) === 0) return abc;
  const lines = abc.split('\n');
  const key = lines.findIndex(line => line.startsWith('K:'));
  return lines.slice(0, Math.max(0, key) + 2 + (dice.below(4) === 0 ? 1 : 0)).join('\n');
}

/** A page from one of its lines on, so that every block of it comes to be tried. */
function shortened(page: string, dice: Dice): string {
  const lines = page.split('\n');
  if (lines.length < 16 || dice.below(30) === 0) return page;
  const from = dice.below(lines.length - 8);
  return lines.slice(from, from + 16).join('\n');
}
