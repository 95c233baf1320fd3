import { rollDice } from '../../shared/drills/dice.ts';
import { type TuneType, tuneTypes } from '../../shared/music/tune.ts';
import { type MadePart, makePart } from './make-part.ts';
import { rhythms } from './rhythms.ts';

/** What a made tune has besides notes; every type comes with each. */
export const traits = [
  'plain',
  'pickups',
  'endings',
  'crooked',
  'retuned',
  'tied',
  'changing key',
  'ordered parts',
] as const;
export type Trait = (typeof traits)[number];

/** A tune to test with. */
export interface TestTune {
  readonly name: string;
  readonly abc: string;
  /** The strings it is played on, lowest first, where they are not the usual ones. */
  readonly tuning: string | null;
}

export interface TuneKey {
  readonly name: string;
  /** The home note, in steps from middle C. */
  readonly home: number;
  /** Chords of four bars in steps above the home note, to choose from. */
  readonly chords: readonly (readonly number[])[];
}

const major = [
  [0, 3, 0, 4],
  [0, 0, 3, 4],
  [0, 4, 0, 3],
];
const modal = [
  [0, 6, 0, 6],
  [0, 0, 6, 0],
];

/** The usual keys of the fiddle, and a few that are less so. */
const keys: readonly TuneKey[] = [
  { name: 'D', home: 1, chords: major },
  { name: 'G', home: 4, chords: major },
  { name: 'A', home: 5, chords: major },
  { name: 'Em', home: 2, chords: modal },
  { name: 'Ador', home: 5, chords: modal },
  { name: 'Dmix', home: 1, chords: modal },
  { name: 'Bm', home: 6, chords: modal },
  { name: 'C', home: 0, chords: major },
  { name: 'F', home: 3, chords: major },
  { name: 'Gdor', home: 4, chords: modal },
];

/**
 * The tune of a number, the same each time: a melody by rule and dice, with the rhythms, forms, keys and
 * slurs that dance tunes have. Nobody wrote it. The first 80 are every type with every trait.
 */
export function makeTune(number: number): TestTune {
  const type = tuneTypes[number % tuneTypes.length] as TuneType;
  const trait = traits[Math.floor(number / tuneTypes.length) % traits.length] as Trait;
  const dice = rollDice(`${type}, ${trait}`, number);
  const isRetuned = trait === 'retuned';
  const key = isRetuned ? (keys[2] as TuneKey) : dice.pick(keys);
  const part = (k: TuneKey): MadePart => makePart(dice, rhythms[type], k, trait);
  const [a, b] = [part(key), part(key)];
  // A second part that ends as the first does is common.
  const endsAlike = trait !== 'endings' && trait !== 'crooked' && dice.below(3) > 0;
  const [first, second] = [text(a), text(endsAlike ? { ...b, second: a.second } : b)];
  const title = `Made ${type} ${number + 1}`;
  const head = `X:${number + 1}\nT:${title}\nR:${type}\nM:${rhythms[type].meter}\nL:1/8\n`;
  const other = dice.pick(keys.filter(k => k !== key));
  const body =
    trait === 'changing key'
      ? `K:${key.name}\n${first}K:${other.name}\n${text(part(other))}K:${key.name}\n${second}`
      : trait === 'ordered parts'
        ? `P:ABAC\nK:${key.name}\nP:A\n${first}P:B\n${second}P:C\n${text(part(key))}`
        : `K:${key.name}\n${first}${second}`;
  const name = `${title} (${trait})`;
  return { name, abc: head + body, tuning: isRetuned ? 'AEAE' : null };
}

const text = ({ opens, first, second, closes }: MadePart): string =>
  `${opens}${first}${second}${closes}\n`;
