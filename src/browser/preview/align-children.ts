/** Neighbouring nodes that go, and those that come in their place. */
export interface Gap {
  readonly remove: readonly Node[];
  readonly add: readonly Node[];
  /** The node, of those that stay, after which they come; null at the beginning. */
  readonly after: Node | null;
}

/** Beyond so many pairs it is quicker to load the page anew. */
const mostPairs = 250_000;

/**
 * Where two lists of nodes part: the gaps between the longest run of nodes that both have in the
 * same order. Of `h1 p₁ p₂ table` and `h1 p₂ p₃ table` those are h1, p₂ and the table; p₁ goes from
 * the first gap and p₃ comes into the second. null where the lists are too long to compare.
 *
 * Lengths of the longest common run of what is left of both lists are filled in from the end
 * (Wagner and Fischer 1974, "The string-to-string correction problem"), then read from the start.
 */
export function alignChildren(
  before: readonly Node[],
  after: readonly Node[],
): readonly Gap[] | null {
  if (before.length * after.length > mostPairs) return null;
  const [olds, news] = [before.map(textOf), after.map(textOf)];
  const width = news.length + 1;
  const lengths = new Uint16Array((olds.length + 1) * width);
  const at = (i: number, k: number): number => lengths[i * width + k] ?? 0;
  for (let i = olds.length - 1; i >= 0; i--) {
    for (let k = news.length - 1; k >= 0; k--) {
      lengths[i * width + k] =
        olds[i] === news[k] ? at(i + 1, k + 1) + 1 : Math.max(at(i + 1, k), at(i, k + 1));
    }
  }
  const gaps: Gap[] = [];
  let [i, k, remove, add] = [0, 0, [] as Node[], [] as Node[]];
  let stays: Node | null = null;
  const close = (): void => {
    if (remove.length + add.length > 0) gaps.push({ remove, add, after: stays });
    [remove, add] = [[], []];
  };
  while (i < olds.length || k < news.length) {
    const [old, next] = [before[i], after[k]];
    if (old && next && olds[i] === news[k]) {
      close();
      stays = old;
      i++;
      k++;
    } else if (old && (!next || at(i + 1, k) >= at(i, k + 1))) {
      remove.push(old);
      i++;
    } else if (next) {
      add.push(next);
      k++;
    }
  }
  close();
  return gaps;
}

const textOf = (node: Node): string =>
  node instanceof Element ? node.outerHTML : `${node.nodeType} ${node.nodeValue}`;
