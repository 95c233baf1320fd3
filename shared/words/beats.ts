import { type Fraction, fractionText } from '../music/fraction.ts';

/** Names of note values, by their part of a whole note. */
export interface BeatPhrases {
  readonly named: Readonly<
    Record<'1' | '1/2' | '1/4' | '1/8' | '1/16' | '3/4' | '3/8' | '3/16', string>
  >;
  readonly partOfWhole: (part: string) => string;
}

/** `minim`; `5/8 of a semibreve` where a beat has no name. */
export function beatName({ beats }: { readonly beats: BeatPhrases }, beat: Fraction): string {
  const part = fractionText(beat);
  const named: Readonly<Record<string, string>> = beats.named;
  return named[part] ?? beats.partOfWhole(part);
}
