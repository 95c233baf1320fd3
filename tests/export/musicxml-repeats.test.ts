import { parse } from 'musicxml-io';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Study } from '../../shared/study.ts';
import { musicXml } from '../../src/export/musicxml.ts';
import { onTunes } from '../tunes/on-tunes.ts';
import { demoStudies, studiesOf, studyText } from './exported-studies.ts';

const facts = { tempo: { beat: { n: 1, d: 4 }, bpm: 80 }, credits: 'By us.' };

/**
 * The order in which a program plays the measures of a file, from its signs alone: a backward repeat
 * goes to the last forward one, and a measure under an ending is played on the times that are its
 * number (MusicXML 4.0, `repeat` and `ending`).
 */
function playedMeasures(xml: string): readonly number[] {
  const measures = (parse(xml).parts[0]?.measures ?? []).map(({ barlines }) => {
    const all = barlines ?? [];
    const backward = all.find(b => b.repeat?.direction === 'backward')?.repeat;
    return {
      forward: all.some(b => b.repeat?.direction === 'forward'),
      times: backward ? (backward.times ?? 2) : 1,
      opens:
        all
          .find(b => b.ending?.type === 'start')
          ?.ending?.number.split(',')
          .map(Number) ?? null,
      closes: all.some(b => b.ending?.type === 'stop' || b.ending?.type === 'discontinue'),
    };
  });
  const played: number[] = [];
  let [start, pass, at] = [0, 1, 0];
  let ending: readonly number[] | null = null;
  let lastOfGroup = 1;
  while (at < measures.length && played.length < 5000) {
    const m = measures[at];
    if (!m) break;
    if (m.forward && start !== at) [start, pass] = [at, 1];
    if (m.opens) ending = m.opens;
    const here: readonly number[] | null = ending;
    if (here) lastOfGroup = Math.max(lastOfGroup, ...here);
    if (m.closes) ending = null;
    if (here && !here.includes(pass)) {
      at += 1;
      continue;
    }
    played.push(at);
    const again = here === null ? pass < m.times : m.times > 1 && pass < endOf(measures, at, here);
    if (again) {
      pass += 1;
      at = start;
      ending = null;
      continue;
    }
    at += 1;
    const next = measures[at];
    // After the last ending, or a repeat that is done, a new stretch begins.
    if (m.times > 1 || (here !== null && m.closes && !next?.opens)) [start, pass] = [at, 1];
  }
  return played;
}

/** The highest number of the endings that stand side by side after this one, its own among them. */
function endOf(
  measures: readonly { readonly opens: readonly number[] | null; readonly closes: boolean }[],
  at: number,
  here: readonly number[],
): number {
  let highest = Math.max(...here);
  let i = at + 1;
  while (measures[i]?.opens) {
    highest = Math.max(highest, ...(measures[i]?.opens ?? []));
    while (measures[i] && !measures[i]?.closes) i += 1;
    i += 1;
  }
  return highest;
}

function compareStudy(study: Study): void {
  const wanted = study.performance.bars.map(b => b.bar);
  expect([study.tune.title, playedMeasures(musicXml(study, facts))]).toEqual([
    study.tune.title,
    wanted,
  ]);
}

describe('the repeats and endings of MusicXML', () => {
  let demo: readonly Study[];
  beforeAll(async () => {
    demo = await demoStudies();
  });

  it('play the bars of the demo book in the played order', () => {
    for (const study of demo) compareStudy(study);
  });

  onTunes('play bars in the played order', 4, tunes => {
    // The order of parts that `P:` gives stands in words only.
    const plain = studiesOf(tunes).filter(s => s.tune.order === null);
    expect(plain.length).toBeGreaterThan(0.6 * tunes.length);
    for (const study of plain) compareStudy(study);
  });
});

describe('what else stands in MusicXML', () => {
  const xml = musicXml(
    studyText(`X:1
T:A & B <c>
C:Wenna Harkle
M:C|
L:1/8
K:D =c
d2|"D7"(3DEF "Gm/b"G2 ^c4|"Fine"A8:|[M:6/8][K:F]"Bb"B3 c3|
w: one | two * three
`),
    facts,
  );

  it('are title, composer, credits and program, and no date', () => {
    expect(xml).toContain('<work-title>A &amp; B &lt;c&gt;</work-title>');
    expect(xml).toContain('<creator type="composer">Wenna Harkle</creator>');
    expect(xml).toContain('<rights>By us.</rights>');
    expect(xml).toContain('<software>Bowbook</software>');
    expect(xml).not.toContain('encoding-date');
  });

  it('are keys with signs of their own, metres and their signs, and the bars where they change', () => {
    expect(xml).toMatch(/<key>\s*<key-step>F<\/key-step>\s*<key-alter>1<\/key-alter>\s*<\/key>/);
    expect(xml).toContain('<time symbol="cut">');
    expect(xml).toMatch(/<fifths>-1<\/fifths>\s*<mode>major<\/mode>/);
    expect(xml).toMatch(/<beats>6<\/beats>\s*<beat-type>8<\/beat-type>/);
  });

  it('are a pickup that is not counted, and chord symbols or words', () => {
    expect(xml).toContain('<measure number="0" implicit="yes">');
    expect(xml.match(/<measure number="[1-9]">/g)?.length).toBe(3);
    expect(xml).toMatch(/<root-step>D<\/root-step>\s*<\/root>\s*<kind text="7">dominant<\/kind>/);
    expect(xml).toMatch(/<bass-step>B<\/bass-step>/);
    expect(xml).toMatch(/<root-step>B<\/root-step>\s*<root-alter>-1<\/root-alter>/);
    expect(xml).toContain('<words>Fine</words>');
  });

  it('are accidentals where the signature does not say it, and tuplets', () => {
    expect(xml.match(/<accidental>(\w+)<\/accidental>/g)).toEqual([
      '<accidental>sharp</accidental>',
    ]);
    expect(xml).toMatch(/<actual-notes>3<\/actual-notes>\s*<normal-notes>2<\/normal-notes>/);
    expect(xml.match(/<tuplet type="\w+"/g)).toEqual([
      '<tuplet type="start"',
      '<tuplet type="stop"',
    ]);
  });

  it('is the tuning of a retuned fiddle', async () => {
    const retuned = (await demoStudies()).find(s => s.tune.id === 'four-ropes-ashore');
    if (!retuned) throw new Error('the demo book has no retuned tune');
    const accords = musicXml(retuned, facts).match(/<accord string="\d">[\s\S]*?<\/accord>/g);
    expect(accords?.map(a => a.replace(/<[^>]*>|\s/g, ''))).toEqual(['E5', 'A4', 'E4', 'A3']);
  });
});
