/** One attribute of a block as written. */
export interface WrittenAttribute {
  readonly name: string;
  /** As written, quotes left out; null where there is a name alone. */
  readonly value: string | null;
  /** Offset of its name in the text that was read. */
  readonly offset: number;
  /** Offset of its value, after the quote if there is one; of its name where there is none. */
  readonly valueOffset: number;
}

/**
 * Reads `{#id of=x bars="A5-A6"}` from the text of a block's opening: every attribute in order,
 * with repeated ones kept, which remark drops without a word (the last one wins).
 *
 * `:::anchor{#end of=x of=y}` gives `id`, `of`, `of`.
 */
export function writtenAttributes(opening: string): readonly WrittenAttribute[] {
  const from = attributesStart(opening);
  if (from === null) return [];
  const one =
    /#([^\s"#'.<=>`}]+)|\.([^\s"#'.<=>`}]+)|([^\s"'<>=`{}#]+)(?:\s*=\s*("[^"]*"|'[^']*'|[^\s"'<=>`}]+))?/g;
  one.lastIndex = from + 1;
  const found: WrittenAttribute[] = [];
  for (let m = one.exec(opening); m; m = one.exec(opening)) {
    const offset = m.index;
    const short = m[1] ?? m[2];
    if (short !== undefined) {
      const name = m[1] === undefined ? 'class' : 'id';
      found.push({ name, value: short, offset, valueOffset: offset + 1 });
    } else if (m[3] !== undefined) {
      const value = unquoted(m[4]);
      const quote = m[4] === value ? 0 : 1;
      const valueOffset = m[4] === undefined ? offset : offset + m[0].length - m[4].length + quote;
      found.push({ name: m[3], value, offset, valueOffset });
    }
  }
  return found;
}

const unquoted = (value: string | undefined): string | null =>
  value === undefined ? null : value.replace(/^(["'])(.*)\1$/s, '$2');

/** Offset of the `{` of an opening, after its label if it has one; null where there is none. */
function attributesStart(opening: string): number | null {
  const end = labelEnd(opening);
  const from = end ?? /^:+[^\s[{]+/.exec(opening)?.[0].length ?? 0;
  return opening[from] === '{' ? from : null;
}

/** What stands between the brackets of `:notes[A (Bc) d]{from=up}`, verbatim; null without any. */
export function writtenLabel(opening: string): string | null {
  const end = labelEnd(opening);
  return end === null ? null : opening.slice(opening.indexOf('[') + 1, end - 1);
}

/** Offset just after the label's closing bracket; brackets nest, and `\]` does not count. */
function labelEnd(opening: string): number | null {
  const start = /^:+[^\s[{]+\[/.exec(opening)?.[0].length;
  if (start === undefined) return null;
  let depth = 1;
  for (let i = start; i < opening.length; i++) {
    if (opening[i] === '\\') i++;
    else if (opening[i] === '[') depth++;
    else if (opening[i] === ']' && --depth === 0) return i + 1;
  }
  return null;
}
