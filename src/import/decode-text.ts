/** A file's text with `\n` as line ends, and the encodings that it was decoded from. */
export interface DecodedText {
  readonly text: string;
  /** One name, or `utf-8` and a second name where some lines are not UTF-8. */
  readonly encodings: readonly string[];
}

/** Encoding of lines that are not UTF-8: Windows-1252, a superset of the letters of Latin-1. */
const oldEncoding = 'windows-1252';

/** Bytes 80 to 9F in Windows-1252 (WHATWG Encoding Standard, index windows-1252). */
const windowsSigns = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/** Decodes Windows-1252. Node 20's decoder gives control characters for the bytes 80 to 9F. */
const decodeOld = (bytes: Uint8Array): string =>
  Buffer.from(bytes)
    .toString('latin1')
    .replace(/[\u0080-\u009f]/g, sign => windowsSigns.charAt(sign.charCodeAt(0) - 0x80));

/**
 * Decodes a text file of unknown encoding. A byte order mark or ABC 2.1's directive `abc-charset`
 * decides for the whole file. Otherwise each line that is valid UTF-8 is decoded as such, any other as
 * Windows-1252, so that a collection pasted from old and new files is read right throughout.
 *
 * All line ends (`\r\n`, `\r` and the rare `\n\r`) become `\n`. Never throws.
 */
export function decodeText(bytes: Uint8Array): DecodedText {
  const marked = markOf(bytes);
  const stated = marked === null ? statedCharset(bytes) : null;
  const whole = marked ?? stated;
  if (whole !== null) {
    const text = whole === oldEncoding ? decodeOld(bytes) : new TextDecoder(whole).decode(bytes);
    return { text: plainLines(text), encodings: [whole] };
  }
  const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  let fellBack = false;
  const lines = linesOf(bytes).map(line => {
    try {
      return utf8.decode(line);
    } catch {
      fellBack = true;
      return decodeOld(line);
    }
  });
  return {
    text: plainLines(lines.join('')),
    encodings: fellBack ? ['utf-8', oldEncoding] : ['utf-8'],
  };
}

function markOf(bytes: Uint8Array): string | null {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return 'utf-16le';
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return 'utf-16be';
  return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 'utf-8' : null;
}

/** The encoding that `%%abc-charset` or `I:abc-charset` names; null for UTF-8, none or an unknown one. */
function statedCharset(bytes: Uint8Array): string | null {
  const plain = decodeOld(bytes);
  const name = /^(?:%%|I:)[ \t]*abc-charset[ \t]+([\w-]+)/m.exec(plain.replace(/\r/g, '\n'))?.[1];
  if (name === undefined || /^utf-?8$/i.test(name)) return null;
  try {
    return new TextDecoder(name).encoding;
  } catch {
    return null;
  }
}

/** The bytes split after each line feed or carriage return, which are part of no UTF-8 sequence. */
function linesOf(bytes: Uint8Array): readonly Uint8Array[] {
  const lines: Uint8Array[] = [];
  let from = 0;
  for (let at = 0; at < bytes.length; at++) {
    if (bytes[at] !== 0x0a && bytes[at] !== 0x0d) continue;
    lines.push(bytes.subarray(from, at + 1));
    from = at + 1;
  }
  return [...lines, bytes.subarray(from)];
}

/** Makes every line end `\n`; drops byte order marks, NULs and the end-of-file character 1A. */
function plainLines(text: string): string {
  const isBackward = text.includes('\n\r') && !/[\r\n]/.test(text.replaceAll('\n\r', ''));
  const plain = isBackward ? text.replaceAll('\n\r', '\n') : text.replace(/\r\n?/g, '\n');
  return plain
    .replace(/^\uFEFF/, '')
    .replaceAll('\u001a', '')
    .replaceAll('\0', '');
}
