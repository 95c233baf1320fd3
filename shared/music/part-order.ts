/**
 * Reads the order of parts in a header's `P:` (ABC 2.1, section 3.1.9): `AABB`, `A2B2`, `(AB)3`,
 * `A.B.C`; dots and spaces only part the letters. Gives the names in playing order; `unknown` are
 * letters that no part has.
 *
 * `readPartOrder('(AB)2C', ['A', 'B', 'C'])` gives indices 0 1 0 1 2.
 */
export function readPartOrder(
  text: string,
  names: readonly string[],
): { readonly order: readonly number[]; readonly unknown: readonly string[] } {
  const unknown = new Set<string>();
  const whole = names.indexOf(text.trim());
  if (whole >= 0) return { order: [whole], unknown: [] };
  const tokens = (text.match(/\d+|[A-Za-z]'*|[()]/g) ?? []).slice(0, longest);
  let at = 0;

  const sequence = (): number[] => {
    const out: number[] = [];
    while (at < tokens.length && tokens[at] !== ')') {
      const token = tokens[at++] as string;
      let item: number[] = [];
      if (token === '(') {
        item = sequence();
        at += 1;
      } else if (!/\d/.test(token)) {
        const part = names.indexOf(token);
        if (part < 0) unknown.add(token);
        else item = [part];
      }
      const times = /^\d+$/.test(tokens[at] ?? '') ? Math.min(Number(tokens[at++]), longest) : 1;
      for (let i = 0; i < times && out.length < longest; i++) out.push(...item);
    }
    return out;
  };

  const order: number[] = [];
  while (at < tokens.length) {
    order.push(...sequence());
    // A bracket closed once too often is passed over.
    if (tokens[at] === ')') at += 1;
  }
  return { order: order.slice(0, longest), unknown: [...unknown] };
}

/** Parts that an order may play: far past any real tune. */
const longest = 1000;
