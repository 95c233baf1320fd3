/** A file as text with plain line ends, and the encodings it was read as. */
export interface DecodedText {
  readonly text: string;
  /** UTF-8 first; the name of a second where not every line was UTF-8. */
  readonly encodings: readonly string[];
}

/** Of old tune collections that do not say: Windows-1252, which holds all letters of Latin-1. */
const oldEncoding = 'windows-1252';

/** Bytes 80 to 9F in Windows-1252 (WHATWG Encoding Standard, index windows-1252). */
const windowsSigns = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

/** Windows-1252 by hand: the decoder of Node 20 gives controls for bytes 80 to 9F. */
const decodeOld = (bytes: Uint8Array): string =>
  Buffer.from(bytes)
    .toString('latin1')
    .replace(/[\u0080-\u009f]/g, sign => windowsSigns.charAt(sign.charCodeAt(0) - 0x80));

/**
 * Reads a file of text whose encoding is not known. A byte order mark or ABC 2.1’s own
 * directive `abc-charset` says it; otherwise each line is UTF-8 where it can be, and
 * Windows-1252 where it cannot, so that a collection pasted together from old and new files is
 * read right throughout.
 *
 * Line ends of every kind, `\r\n`, `\r` and the rare `\n\r`, become `\n`. Never throws.
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

/** What `%%abc-charset iso-8859-2` or `I:abc-charset …` names, where we can read that; else null. */
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

/** The bytes cut after each line feed or return: neither is ever part of a letter in UTF-8. */
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

/** `\n` for every line end; the end-of-file sign of old systems, and a mark left in, are dropped. */
function plainLines(text: string): string {
  const isBackward = text.includes('\n\r') && !/[\r\n]/.test(text.replaceAll('\n\r', ''));
  const plain = isBackward ? text.replaceAll('\n\r', '\n') : text.replace(/\r\n?/g, '\n');
  return plain
    .replace(/^\uFEFF/, '')
    .replaceAll('\u001a', '')
    .replaceAll('\0', '');
}
