import { at } from '../must.ts';

/**
 * Reads the order of parts in a header's `P:` (ABC 2.1, section 3.1.9): `AABB`, `A2B2`, `(AB)3`,
 * `A.B.C`; dots and spaces only part the letters. Words are a name, and no order: it is empty then. `order` are indices into `names` in playing order,
 * 1000 at most; `unknown` are letters that no part has, once each. Never throws.
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
  if (isName(text, names)) return { order: [], unknown: [] };
  const tokens = (text.match(/\d+|[A-Za-z]'*|[()]/g) ?? []).slice(0, longest);
  let next = 0;

  const sequence = (): number[] => {
    const out: number[] = [];
    while (next < tokens.length && tokens[next] !== ')') {
      const token = at(tokens, next++);
      let item: number[] = [];
      if (token === '(') {
        item = sequence();
        next += 1;
      } else if (!/\d/.test(token)) {
        const part = names.indexOf(token);
        if (part < 0) unknown.add(token);
        else item = [part];
      }
      const times = /^\d+$/.test(tokens[next] ?? '')
        ? Math.min(Number(tokens[next++]), longest)
        : 1;
      for (let i = 0; i < times && out.length < longest; i++) out.push(...item);
    }
    return out;
  };

  const order: number[] = [];
  while (next < tokens.length) {
    order.push(...sequence());
    // A bracket closed once too often is passed over.
    if (tokens[next] === ')') next += 1;
  }
  return { order: order.slice(0, longest), unknown: [...unknown] };
}

/** Whether a `P:` has words, such as `Modern Version`, and is no order: two small letters together, not all of them parts. */
const isName = (text: string, names: readonly string[]): boolean =>
  /[a-z]{2}/.test(text) && (text.match(/[A-Za-z]'*/g) ?? []).some(l => !names.includes(l));

/** Parts that an order may play: far past any real tune. */
const longest = 1000;
