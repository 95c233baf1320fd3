import { type TuneType, tuneTypes } from '../../shared/music/tune.ts';

/** Names that collections use, where they differ from ours (common practice). */
const otherNames: readonly (readonly [RegExp, TuneType])[] = [
  [/\b(slip|hop)[ -]?jig/, 'slip jig'],
  [/\bstrathspey/, 'strathspey'],
  [/\bhorn[ -]?pipe/, 'hornpipe'],
  [/\breel|breakdown|rant\b/, 'reel'],
  [/\bjig/, 'jig'],
  [/\bpolka/, 'polka'],
  [/\bslide/, 'slide'],
  [/\bwaltz/, 'waltz'],
  [/\b(retreat )?march|quickstep/, 'march'],
  [/\bair|lament|aire\b/, 'air'],
];

/** The type that `R:` names, however it is written: "Double Jig" is a jig. Null when unknown. */
export function tuneType(rhythm: string | null): TuneType | null {
  if (rhythm === null) return null;
  const name = rhythm.trim().toLowerCase();
  const exact = tuneTypes.find(t => t === name);
  return exact ?? otherNames.find(([pattern]) => pattern.test(name))?.[1] ?? null;
}
