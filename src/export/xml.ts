/** An element of an XML document: its name, its attributes, and text or elements in it. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly content: string | XmlParts;
}

/** Elements in order; those that are null are left out, so that a part can be optional. */
export type XmlParts = readonly (XmlElement | null)[];

const noAttributes: XmlElement['attributes'] = {};

export const element = (
  name: string,
  content: string | number | XmlParts = '',
  attributes: XmlElement['attributes'] = noAttributes,
): XmlElement => ({
  name,
  attributes,
  content: typeof content === 'number' ? `${content}` : content,
});

/** An element that stands only where there is something in it. */
export const filled = (name: string, parts: XmlParts): XmlElement | null =>
  parts.some(part => part !== null) ? element(name, parts) : null;

/** The document as text, an element a line; text is escaped, and signs that XML forbids left out. */
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

/** Text that stands as it is: ASCII without control signs and the signs of markup. */
const isPlain = /^[ !#-%'-;=?-~]*$/;

/** What XML 1.0 cannot hold (section 2.2) is dropped: control signs and halves of pairs. */
const escaped = (text: string): string =>
  isPlain.test(text)
    ? text
    : text
        .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
        .replace(/&/g, '&amp;')
        .replace(/</g, '&lt;')
        .replace(/>/g, '&gt;')
        .replace(/"/g, '&quot;');
