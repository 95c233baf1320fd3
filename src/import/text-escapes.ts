/** Combining accents by the character that stands for them after a backslash in ABC 2.1. */
const accents: Readonly<Record<string, string>> = {
  '`': '\u0300',
  "'": '\u0301',
  '^': '\u0302',
  '~': '\u0303',
  '"': '\u0308',
  c: '\u0327',
  u: '\u0306',
  v: '\u030c',
  H: '\u030b',
};

/** Letters that ABC 2.1 writes with two characters after a backslash. */
const letters: Readonly<Record<string, string>> = {
  AA: 'Å',
  aa: 'å',
  AE: 'Æ',
  ae: 'æ',
  OE: 'Œ',
  oe: 'œ',
  ss: 'ß',
  '/O': 'Ø',
  '/o': 'ø',
  DH: 'Ð',
  dh: 'ð',
  TH: 'Þ',
  th: 'þ',
};

/** Accents by the name they have in HTML entities: `&eacute;`. */
const entityAccents: Readonly<Record<string, string>> = {
  grave: '\u0300',
  acute: '\u0301',
  circ: '\u0302',
  tilde: '\u0303',
  uml: '\u0308',
  cedil: '\u0327',
  breve: '\u0306',
  caron: '\u030c',
};

const entities: Readonly<Record<string, string>> = {
  Aring: 'Å',
  aring: 'å',
  AElig: 'Æ',
  aelig: 'æ',
  OElig: 'Œ',
  oelig: 'œ',
  szlig: 'ß',
  Oslash: 'Ø',
  oslash: 'ø',
  ETH: 'Ð',
  eth: 'ð',
  THORN: 'Þ',
  thorn: 'þ',
  copy: '©',
  amp: '&',
};

const escapes =
  /\\u([\da-fA-F]{4})|\\U([\da-fA-F]{8})|\\(AA|aa|AE|ae|OE|oe|ss|\/O|\/o|DH|dh|TH|th)|\\([`'^~"cuvH])([A-Za-z])|&#(\d{1,7});|&#x([\da-fA-F]{1,6});|&([A-Za-z]+);/g;

/**
 * Decodes the escapes in the text of an ABC field: mnemonics `Caf\'e`, entities `Caf&eacute;` and code
 * points `Caf\u00e9` (ABC 2.1, section 8.2 and its appendix of accents). Leaves escapes of no letter,
 * and `\%` and `\&`, which must stay escaped in ABC.
 */
export function readEscapes(text: string): string {
  return text.replace(
    escapes,
    (
      whole: string,
      short?: string,
      long?: string,
      letter?: string,
      accent?: string,
      on?: string,
      decimal?: string,
      hex?: string,
      entity?: string,
    ) => {
      if (short ?? long) return fromCode(Number.parseInt(short ?? long ?? '', 16), whole);
      if (letter) return letters[letter] ?? whole;
      if (accent && on) return composed(on, accents[accent], whole);
      if (decimal) return fromCode(Number(decimal), whole);
      if (hex) return fromCode(Number.parseInt(hex, 16), whole);
      return entity ? (entityLetter(entity) ?? whole) : whole;
    },
  );
}

function entityLetter(name: string): string | null {
  if (Object.hasOwn(entities, name)) return entities[name] ?? null;
  const m = /^([A-Za-z])([a-z]+)$/.exec(name);
  const [on, accent] = [m?.[1], m?.[2]];
  if (!on || !accent || !Object.hasOwn(entityAccents, accent)) return null;
  return composed(on, entityAccents[accent], null);
}

/** A letter with its accent as one character; `otherwise` where Unicode has none. */
function composed<T extends string | null>(
  on: string,
  accent: string | undefined,
  otherwise: T,
): string | T {
  const letter = `${on}${accent ?? ''}`.normalize('NFC');
  return letter.length === 1 && letter !== on ? letter : otherwise;
}

/** The character of a code point; `otherwise` for ASCII, controls and surrogates. */
function fromCode(code: number, otherwise: string): string {
  const isLetter = code >= 0xa0 && code <= 0x10ffff && !(code >= 0xd800 && code <= 0xdfff);
  return isLetter ? String.fromCodePoint(code) : otherwise;
}
