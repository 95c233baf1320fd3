/** Names that a page cannot have: `index`, and the device names that Windows reserves. */
const reserved = /^(?:index|con|prn|aux|nul|com\d|lpt\d)$/;
const longest = 60;

/**
 * Returns a name that is not in `taken`, and adds it there: `wished`, cut between words to 60 letters,
 * with `-2`, `-3` … where it is taken. `otherwise` is used where `wished` is empty.
 */
export function freeName(wished: string, otherwise: string, taken: Set<string>): string {
  const short = wished.length <= longest ? wished : wished.slice(0, longest).replace(/-[^-]*$/, '');
  const plain = short === '' ? otherwise : reserved.test(short) ? `${short}-tune` : short;
  let name = plain;
  for (let n = 2; taken.has(name); n++) name = `${plain}-${n}`;
  taken.add(name);
  return name;
}
