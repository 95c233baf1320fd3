/**
 * How well remembered notes fit the opening of a tune. Rhythm and octave are left out on both
 * sides already, so an opening is a string, one character a note. What people remember differs
 * from what is written in three ways: they leave out the pickup, they sing a repeated note once, and
 * they have one note wrong. Each is allowed, and costs something, so that the plain reading comes
 * first. For `AABA` against a tune that opens `D|AB AF`: the pickup is passed over, `AABA` and
 * `ABAF` agree once repeats are sung once (`ABA`), and the cost is that of the repeats, 1.
 */
export const openingCost = {
  exact: 0,
  repeatsOnce: 1,
  oneWrong: 2,
  within: 3,
} as const;

/** Notes that must be given before one of them may be wrong, or before they may stand further on. */
const enough = 4;

/** The cost of the best fit of `asked` to an opening, smaller is better; null where none fits. */
export function matchOpening(asked: string, opening: string, pickup: number): number | null {
  if (asked === '') return null;
  const starts = pickup > 0 ? [opening, opening.slice(pickup)] : [opening];
  if (starts.some(s => s.startsWith(asked))) return openingCost.exact;
  const once = singly(asked);
  if (once.length > 1 && starts.some(s => singly(s).startsWith(once)))
    return openingCost.repeatsOnce;
  if (asked.length < enough) return null;
  if (starts.some(s => startsNearly(s, asked))) return openingCost.oneWrong;
  return opening.includes(asked) ? openingCost.within : null;
}

/** Each run of one note as that note once: `AABA` is `ABA`. */
const singly = (notes: string): string => notes.replace(/(.)\1+/g, '$1');

/** Whether `text` starts with `asked` but for one note changed, left out or put in. */
function startsNearly(text: string, asked: string): boolean {
  let same = 0;
  while (same < asked.length && text[same] === asked[same]) same += 1;
  const rest = asked.slice(same + 1);
  return (
    text.startsWith(rest, same + 1) || // changed
    text.startsWith(rest, same) || // one too many was given
    text.startsWith(asked.slice(same), same + 1) // one was left out
  );
}
