import { describe, expect, it } from 'vitest';
import { decodeText } from '../../src/import/decode-text.ts';

const bytes = (...parts: (string | number)[]): Uint8Array =>
  Buffer.concat(parts.map(p => (typeof p === 'number' ? Buffer.from([p]) : Buffer.from(p))));

const textOf = (b: Uint8Array): string => decodeText(b).text;

describe('a file of text in an unknown encoding', () => {
  it('is UTF-8 where it can be, with or without a mark', () => {
    expect(decodeText(bytes('T:Åse’s\n'))).toEqual({ text: 'T:Åse’s\n', encodings: ['utf-8'] });
    expect(textOf(bytes(0xef, 0xbb, 0xbf, 'X:1\n'))).toBe('X:1\n');
  });

  it('is UTF-16 where its mark says so', () => {
    const little = Buffer.concat([
      Buffer.from([0xff, 0xfe]),
      Buffer.from('X:1\nT:Bølge', 'utf16le'),
    ]);
    expect(textOf(little)).toBe('X:1\nT:Bølge');
    expect(textOf(Buffer.from(little).swap16())).toBe('X:1\nT:Bølge');
  });

  it('is Latin-1, and Windows-1252 where that has letters of its own, else', () => {
    // E9 is é in both; 92 is a control in Latin-1 and an apostrophe in Windows-1252.
    const read = decodeText(bytes('T:Caf', 0xe9, ' d', 0x92, 'Or\n'));
    expect(read).toEqual({ text: 'T:Café d’Or\n', encodings: ['utf-8', 'windows-1252'] });
  });

  it('may change from line to line, in a collection pasted together', () => {
    expect(textOf(bytes('T:Åse\nT:', 0xc5, 'se\n'))).toBe('T:Åse\nT:Åse\n');
  });

  it('is what abc-charset says', () => {
    // B3 is ł in ISO 8859-2, and ³ in Latin-1.
    expect(textOf(bytes('%%abc-charset iso-8859-2\nT:Ma', 0xb3, 'y\n'))).toContain('T:Mały');
    expect(textOf(bytes('I:abc-charset no-such\nT:', 0xe9, '\n'))).toContain('T:é');
  });

  it.each([
    ['of Unix', 'X:1\n\nT:a\nb'],
    ['of Windows', 'X:1\r\n\r\nT:a\r\nb'],
    ['of old Macintosh', 'X:1\r\rT:a\rb'],
    ['the wrong way round', 'X:1\n\r\n\rT:a\n\rb'],
    ['of several kinds', 'X:1\n\r\nT:a\rb'],
  ])('has line ends %s', (_, text) => {
    expect(textOf(bytes(text))).toBe('X:1\n\nT:a\nb');
  });

  it('drops the end-of-file sign of old systems', () => {
    expect(textOf(bytes('K:D\nD|\n', 0x1a))).toBe('K:D\nD|\n');
  });
});
