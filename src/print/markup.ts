/**
 * Typst source. Text goes in as string literals only, so that nothing a teacher writes is read as markup.
 */
export type Markup = string;

/** Writes a string literal. */
export const literal = (text: string): Markup =>
  `"${text.replace(/[\\"]/g, '\\$&').replace(/[\n\r\t]/g, ' ')}"`;

/** Writes text as content of markup; empty for an empty text. */
export const words = (text: string): Markup => (text === '' ? '' : `#${literal(text)};`);

/** Writes a call of a function of the template: `#name(a, b)[body]`. */
export function call(
  name: string,
  args: readonly (string | null)[] = [],
  body: Markup | null = null,
): Markup {
  const given = args.filter(a => a !== null).join(', ');
  return `#${name}(${given})${body === null ? '' : `[${body}]`}`;
}

/** Writes a named argument. */
export const named = (name: string, value: string | number | boolean): string =>
  `${name}: ${value}`;

/** Writes an array. Typst needs the comma after a single item. */
export const list = (items: readonly string[]): string =>
  `(${items.join(', ')}${items.length === 1 ? ',' : ''})`;

/** Writes a length in millimetres, to hundredths. */
export const mm = (length: number): string => `${Math.round(length * 100) / 100}mm`;
