import { describe, expect, it } from 'vitest';
import { readEscapes } from '../../src/import/text-escapes.ts';

/** Forms and letters of ABC 2.1: section 8.2, text strings, and its appendix of accents. */
describe('escapes in the text of a field', () => {
  it.each([
    ['\\\'e \\`a \\^o \\~n \\"u', 'é à ô ñ ü'],
    ['\\cc \\cC \\uA \\ve \\Ho', 'ç Ç Ă ě ő'],
    ['\\AA\\aa \\AE\\ae \\/O\\/o \\OE\\oe \\ss \\DH\\dh \\TH\\th', 'Åå Ææ Øø Œœ ß Ðð Þþ'],
    ['&eacute; &Agrave; &ocirc; &ntilde; &uuml; &ccedil;', 'é À ô ñ ü ç'],
    ['&aring; &AElig; &oslash; &szlig; &scaron;', 'å Æ ø ß š'],
    ['\\u00e9 \\u0141 \\U0001D11E &#233; &#xe9;', 'é Ł 𝄞 é é'],
    ['Rock &amp; Roll', 'Rock & Roll'],
  ])('%s', (written, read) => {
    expect(readEscapes(written)).toBe(read);
  });

  it('stays as it is where it is none', () => {
    for (const text of [
      "Wenna's",
      'a\\%b',
      'a \\& b',
      '&nosuch;',
      '&#7;',
      '\\u12',
      "\\'q",
      '\\ud800',
      'AT&T;',
    ]) {
      expect(readEscapes(text)).toBe(text);
    }
  });
});
