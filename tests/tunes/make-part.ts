import type { Dice } from '../../shared/drills/dice.ts';
import { slurPhrase, tieBars } from './bow-phrase.ts';
import type { Trait, TuneKey } from './make-tune.ts';
import {
  type Compass,
  copied,
  type DraftBar,
  fillBar,
  makeFigure,
  makePhrase,
  varied,
} from './phrase.ts';
import { lengthOf, type Rhythm } from './rhythms.ts';
import { writeBar, writeBars } from './write-bars.ts';

/** Forms of a part of four phrases; a capital is the phrase of its small letter, varied. */
const forms = ['abac', 'abAc', 'aabc', 'abcd', 'aAbc', 'abAd'];

/** A part of a tune in ABC, in two halves: four phrases of two bars, more or less if it is crooked. */
export interface MadePart {
  readonly opens: string;
  readonly first: string;
  readonly second: string;
  readonly closes: string;
}

export function makePart(dice: Dice, rhythm: Rhythm, key: TuneKey, trait: Trait): MadePart {
  const compass = compassOf(key, trait);
  const slurs = { often: dice.pick([0, 2, 4, 6]), acrossBars: trait === 'tied' };
  const phrase = (chords: readonly number[]): DraftBar[] => {
    const bars = makePhrase(dice, rhythm, compass, chords);
    if (trait === 'tied' && dice.below(2) === 0) tieBars(bars);
    slurPhrase(dice, bars, slurs);
    return bars;
  };
  const chords = dice.pick(key.chords);
  const [opening, ending] = [chords.slice(0, 2), chords.slice(2)];
  const phrases = new Map<string, DraftBar[]>();
  const bars = [...dice.pick(forms)].slice(0, 3).flatMap(letter => {
    const plain = letter.toLowerCase();
    const bars = phrases.get(plain) ?? phrase(opening);
    phrases.set(plain, bars);
    return letter === plain ? copied(bars) : varied(dice, compass, bars, opening[1] ?? 0);
  });
  bars.push(...phrase(ending.slice(0, 1)));
  if (trait === 'crooked') makeCrooked(dice, rhythm, compass, bars);
  if (trait === 'pickups' || trait === 'ordered parts') dress(dice, bars);
  const isShort = trait === 'pickups' || trait === 'ordered parts';
  const close = (): string => writeBar(closingBar(dice, rhythm, compass, isShort));
  const first = `${writeBars(rhythm, bars.slice(0, 4))}|\n`;
  const start = `${writeBars(rhythm, bars.slice(4))}|`;
  switch (trait) {
    case 'pickups': {
      const pickup = makeFigure(dice, rhythm.pickup, compass, 4, compass.home);
      return { opens: `|:${writeBar(pickup)}|`, first, second: start + close(), closes: ':|' };
    }
    case 'endings': {
      const [once, twice] = dice.pick([
        ['1', '2'],
        ['1', '2'],
        ['1,3', '2,4'],
      ] as const);
      const back = fillBar(dice, rhythm, compass, 4, rhythm.beats * rhythm.beat, compass.home);
      const second = `${start}[${once} ${writeBar(back)}:|[${twice} ${close()}`;
      return { opens: '|:', first, second, closes: '||' };
    }
    case 'ordered parts':
      return {
        opens: '',
        first,
        second: `${start}${close()} z${lengthOf(rhythm.pickup)}`,
        closes: '||',
      };
    default:
      return { opens: '|:', first, second: start + close(), closes: ':|' };
  }
}

/** Within the first position of the fiddle: from its lowest string, retuned or not, to the high B. */
function compassOf({ home }: TuneKey, trait: Trait): Compass {
  const lowest = trait === 'retuned' ? -2 : -3;
  return {
    home,
    lowest: Math.max(lowest, home - (trait === 'retuned' ? 7 : 5)),
    highest: Math.min(13, home + 9),
  };
}

/** A bar more or less, and another that lacks its last beat. */
function makeCrooked(dice: Dice, rhythm: Rhythm, compass: Compass, bars: DraftBar[]): void {
  const echo = dice.below(2) === 0 ? copied(bars.slice(3, 4)) : [];
  bars.splice(echo.length === 0 ? 5 : 4, echo.length === 0 ? 1 : 0, ...echo);
  const length = (rhythm.beats - 1) * rhythm.beat;
  bars[2] = fillBar(dice, rhythm, compass, 0, length, bars[2]?.[0]?.pitch ?? compass.home);
}

/** Grace notes, rolls, dots, strokes by hand and double stops here and there. */
function dress(dice: Dice, bars: readonly DraftBar[]): void {
  for (const bar of bars) {
    const plain = unslurred(bar);
    const note = plain.length > 0 ? dice.pick(plain) : undefined;
    if (!note) continue;
    note.signs = dice.pick(['', '~', '{g}', '.', 'u', 'v', '"G"', '']);
    note.double = note.signs === '' && note.pitch < 8;
  }
}

/** Notes under no slur. */
const unslurred = (bar: DraftBar): DraftBar => {
  let depth = 0;
  return bar.filter(n => {
    if (n.opensSlur) depth++;
    const isPlain = depth === 0;
    if (n.closesSlur) depth--;
    return isPlain;
  });
};

/** Melody, and home: on a long note, or a shorter one that leaves room for a pickup or a rest. */
function closingBar(dice: Dice, rhythm: Rhythm, compass: Compass, isShort: boolean): DraftBar {
  const { home } = compass;
  const length = rhythm.beats * rhythm.beat - lengthOf(rhythm.close);
  const run = fillBar(dice, rhythm, compass, 4, length, home);
  const last = makeFigure(dice, isShort ? rhythm.shortClose : rhythm.close, compass, 0, home);
  return [...run, ...last.map(note => ({ ...note, pitch: home }))];
}
