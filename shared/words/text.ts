/** Small steps with text that are the same in every language. */

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

export const uncapital = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** "A, B and C" with `joint` " and "; `comma` stands between the others. */
export const joined = (items: readonly string[], joint: string, comma = ', '): string =>
  items.length < 2
    ? items.join('')
    : `${items.slice(0, -1).join(comma)}${joint}${items.at(-1) ?? ''}`;

/** "12,345" with `mark` ",": the digits of a whole number in threes, so that long ones can be read. */
export const inThrees = (n: number | bigint, mark: string): string =>
  `${n}`.replaceAll(/\B(?=(?:\d{3})+$)/g, mark);
