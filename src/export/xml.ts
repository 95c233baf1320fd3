/** An XML element: its name, attributes, and text or child elements. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly content: string | XmlParts;
}

/** Child elements in order; null stands for an optional one that is left out. */
export type XmlParts = readonly (XmlElement | null)[];

const noAttributes: XmlElement['attributes'] = {};

/** Makes an element. A number becomes text. */
export const element = (
  name: string,
  content: string | number | XmlParts = '',
  attributes: XmlElement['attributes'] = noAttributes,
): XmlElement => ({
  name,
  attributes,
  content: typeof content === 'number' ? `${content}` : content,
});

/** An element with children; null where all of them are null. */
export const filled = (name: string, parts: XmlParts): XmlElement | null =>
  parts.some(part => part !== null) ? element(name, parts) : null;

/** The document as text, one element per line. Escapes text, and drops characters that XML forbids. */
export function xmlText(root: XmlElement, doctype: string): string {
  const lines = ['<?xml version="1.0" encoding="UTF-8" standalone="no"?>', doctype];
  write(root, '', lines);
  return `${lines.join('\n')}\n`;
}

function write({ name, attributes, content }: XmlElement, indent: string, lines: string[]): void {
  const open = `${indent}<${name}${attributesText(attributes)}`;
  if (content.length === 0) lines.push(`${open}/>`);
  else if (typeof content === 'string') lines.push(`${open}>${escaped(content)}</${name}>`);
  else {
    lines.push(`${open}>`);
    const deeper = `${indent} `;
    for (const part of content) if (part) write(part, deeper, lines);
    lines.push(`${indent}</${name}>`);
  }
}

function attributesText(attributes: XmlElement['attributes']): string {
  let text = '';
  for (const key in attributes) text += ` ${key}="${escaped(`${attributes[key]}`)}"`;
  return text;
}

/** Text that needs no escaping: printable ASCII without markup characters. */
const isPlain = /^[ !#-%'-;=?-~]*$/;

/** Drops what XML 1.0 forbids (section 2.2): control characters and unpaired surrogates. */
const escaped = (text: string): string =>
  isPlain.test(text)
    ? text
    : text
        .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
        .replace(/&/g, '&amp;')
        .replace(/</g, '&lt;')
        .replace(/>/g, '&gt;')
        .replace(/"/g, '&quot;');
