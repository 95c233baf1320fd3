/** Names that a page cannot have: the list of tunes, and files that Windows keeps for itself. */
const kept = /^(?:index|con|prn|aux|nul|com\d|lpt\d)$/;
const longest = 60;

/**
 * A name that is not taken: the one wished for, cut between words where it is long, with `-2`,
 * `-3` where another has it. The name is added to `taken`.
 */
export function freeName(wished: string, otherwise: string, taken: Set<string>): string {
  const short = wished.length <= longest ? wished : wished.slice(0, longest).replace(/-[^-]*$/, '');
  const plain = short === '' ? otherwise : kept.test(short) ? `${short}-tune` : short;
  let name = plain;
  for (let n = 2; taken.has(name); n++) name = `${plain}-${n}`;
  taken.add(name);
  return name;
}
