/** What a page of ABC has at its notes, as MusicXML 4.0 says it (`beam`, `fermata`, `words`, `ending`). */
import { parse } from 'musicxml-io';
import { describe, expect, it } from 'vitest';
import { musicXml } from '../../src/export/musicxml.ts';
import { studyText } from './exported-studies.ts';

const facts = { tempo: { beat: { n: 1, d: 4 }, bpm: 80 }, credits: 'By us.' };
const xmlOf = (body: string): string =>
  musicXml(studyText(`X:1\nT:T\nM:4/4\nL:1/8\nK:C\n${body}\n`), facts);

/** The `note` elements as text. */
const notesOf = (body: string): string[] => xmlOf(body).match(/<note>[\s\S]*?<\/note>/g) ?? [];

const beams = (body: string): string[] =>
  notesOf(body).map(n =>
    [...n.matchAll(/<beam number="(\d)">([a-z ]+)</g)].map(m => m[2]).join(','),
  );

describe('beams (ABC 2.1, section 4.7)', () => {
  it.each([
    ['AB cd e4|', ['begin', 'end', 'begin', 'end', '']],
    ['ABc d e4|', ['begin', 'continue', 'end', '', '']],
    [
      'A>B c/d/e A2 z2|',
      ['begin', 'end,backward hook', 'begin,begin', 'continue,end', 'end', '', ''],
    ],
    ['A/B3/2 A2B2 z2|', ['begin,forward hook', 'end', '', '', '']],
    ['AzB (3cde f2|', ['', '', '', 'begin', 'continue', 'end', '']],
    ['d4 A2"G"B(c|d)e2f4|', ['', '', 'begin', 'end', '', '', '']],
  ])('%s', (body, expected) => expect(beams(body)).toEqual(expected));
});

describe('endings', () => {
  it('a last ending that ends :| is not played again', () => {
    const backward = (body: string) => xmlOf(body).match(/direction="backward"/g)?.length;
    expect(backward('|:A8|[1B8:|[2c8:|]')).toBe(1);
    expect(backward('|:A8|[1B8:|[2c8:|[3d8:|]')).toBe(2);
    expect(backward('|:A8|B8:|')).toBe(1);
  });
});

describe('signs', () => {
  it('a bow mark inside a slur is left out', () => {
    const marks = notesOf('v(AuBc) ud e4|').map(n => /<(down|up)-bow/.exec(n)?.[1] ?? '');
    expect(marks).toEqual(['down', '', '', 'up', 'down']);
  });
  it('a fermata and words are kept, at notes, rests and bar lines', () => {
    const body = '"^Slowly"HA4 "Am""_dolce"!fermata!B4|H!trill!c4 z2 !fermata!x2"_D.C."|]';
    expect(notesOf(body).map(n => n.includes('<fermata/>'))).toEqual([
      true,
      true,
      true,
      false,
      true,
    ]);
    expect([...xmlOf(body).matchAll(/<words>(.*?)</g)].map(m => m[1])).toEqual([
      'Slowly',
      'dolce',
      'D.C.',
    ]);
    expect(parse(xmlOf(body)).parts[0]?.measures).toHaveLength(2);
  });
});
