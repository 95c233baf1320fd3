/**
 * Typst source as text. Words always go in as string literals, never as markup, so that nothing a
 * teacher writes can be taken for an instruction.
 */
export type Markup = string;

/** A string literal. */
export const literal = (text: string): Markup =>
  `"${text.replace(/[\\"]/g, '\\$&').replace(/[\n\r\t]/g, ' ')}"`;

/** Words as content, in a place where markup is read. */
export const words = (text: string): Markup => (text === '' ? '' : `#${literal(text)};`);

/** A call whose result stands in the text: `#name(a, b)[body]`. */
export function call(
  name: string,
  args: readonly (string | null)[] = [],
  body: Markup | null = null,
): Markup {
  const given = args.filter(a => a !== null).join(', ');
  return `#${name}(${given})${body === null ? '' : `[${body}]`}`;
}

/** A named argument. */
export const named = (name: string, value: string | number | boolean): string =>
  `${name}: ${value}`;

/** An array; one item needs its comma. */
export const list = (items: readonly string[]): string =>
  `(${items.join(', ')}${items.length === 1 ? ',' : ''})`;

/** A millimetre length, to hundredths. */
export const mm = (length: number): string => `${Math.round(length * 100) / 100}mm`;
