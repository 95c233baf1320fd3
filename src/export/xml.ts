/** An element of an XML document: its name, its attributes, and text or elements in it. */
export interface XmlElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly content: string | readonly XmlElement[];
}

type Content = string | number | readonly (XmlElement | null)[];

/** Makes an element; elements that are null are left out, so that a part can be optional. */
export function element(
  name: string,
  content: Content = [],
  attributes: XmlElement['attributes'] = {},
): XmlElement {
  if (typeof content === 'string' || typeof content === 'number') {
    return { name, attributes, content: String(content) };
  }
  return { name, attributes, content: content.filter(e => e !== null) };
}

/** The document as text, an element a line; text is escaped, and signs that XML forbids left out. */
export function xmlText(root: XmlElement, doctype: string): string {
  return `<?xml version="1.0" encoding="UTF-8" standalone="no"?>\n${doctype}\n${write(root, '')}`;
}

function write({ name, attributes, content }: XmlElement, indent: string): string {
  const open = `${indent}<${name}${Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${escaped(String(value))}"`)
    .join('')}`;
  if (content.length === 0) return `${open}/>\n`;
  if (typeof content === 'string') return `${open}>${escaped(content)}</${name}>\n`;
  return `${open}>\n${content.map(e => write(e, `${indent} `)).join('')}${indent}</${name}>\n`;
}

/** What XML 1.0 cannot hold (section 2.2) is dropped: control signs and halves of pairs. */
const escaped = (text: string): string =>
  text
    .replace(/[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu, '')
    .replace(/&/g, '&amp;')
    .replace(/</g, '&lt;')
    .replace(/>/g, '&gt;')
    .replace(/"/g, '&quot;');
