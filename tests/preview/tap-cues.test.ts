import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { placeCues } from '../../shared/clips/place-cues.ts';
import { clipLine, cueOf, cueTime, tapPoints } from '../../shared/clips/tap-cues.ts';
import { toNumber } from '../../shared/music/fraction.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import { mapSections } from '../../shared/sections/map-sections.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { readBook } from '../../src/read/read-book.ts';

const head = 'T:Nine Pegs\nR:reel\nM:4/4\nL:1/8\nK:D\n';
const bars = 'DFAF GEFD|';

function pointsOf(abc: string) {
  const [tune] = parseTunes({ text: abc, file: 'tune.abc', line: 1, indent: 0 }).tunes;
  if (!tune) throw new Error('the tune could not be read');
  const performance = playedOrder(tune);
  return { tune, performance, points: tapPoints(tune, performance, mapSections(tune, null, null)) };
}

/** A form, and the bars at which its phrases of two bars begin, worked out by hand. */
const forms: readonly (readonly [string, string, string])[] = [
  ['once through', bars.repeat(8), 'A1 A3 A5 A7'],
  [
    'two parts, each twice',
    `|:${bars.repeat(3)}D8:||:${bars.repeat(3)}d8:|`,
    'A1 A3 A1/2 A3/2 B1 B3 B1/2 B3/2',
  ],
  ['a pickup', `FG|${bars.repeat(3)}D8|`, 'A1 A3'],
];

describe('where one taps along', () => {
  it.each(forms)('%s', (_, music, expected) => {
    expect(
      pointsOf(head + music)
        .points.map(p => p.bar)
        .join(' '),
    ).toBe(expected);
  });

  it.each([
    ...forms.map(([name, music]) => [name, music] as const),
    ['endings', `|:${bars.repeat(3)}|1 A8:|2 D8||${bars.repeat(4)}`] as const,
    [
      'endings, gone through again',
      `P:ABA\nK:D\nP:A\n|:${bars}|1 A8:|2 D8|\nP:B\n${bars.repeat(2)}`,
    ] as const,
    ['three times', `|:${bars.repeat(4)}:|3`] as const,
  ])('every cue means the bar it was tapped on, in time: %s', (_, music) => {
    const { tune, performance, points } = pointsOf(head + music);
    expect(points.length).toBeGreaterThan(1);
    for (const { bar, played } of points) {
      const { placed, problems } = placeCues(tune, performance, [cueOf({ bar, seconds: 1 })]);
      expect(problems).toEqual([]);
      expect(placed.map(p => p.played)).toEqual([played]);
    }
    const onsets = points.map(p => toNumber(performance.bars[p.played]?.onset ?? { n: 0, d: 1 }));
    expect(onsets).toEqual([...onsets].sort((a, b) => a - b));
  });
});

describe('the line to copy', () => {
  it.each([
    [0, '0:00'],
    [4, '0:04'],
    [4.2, '0:04.2'],
    [9.996, '0:10'],
    [59.999, '1:00'],
    [62.05, '1:02.05'],
    [600.5, '10:00.5'],
  ])('%d seconds is %s', (seconds, written) => {
    expect(cueTime(seconds)).toBe(written);
  });

  it('is read by the build as it was tapped', async () => {
    const root = mkdtempSync(join(tmpdir(), 'bowbook-tap-'));
    for (const folder of ['lessons', 'media']) mkdirSync(join(root, folder));
    const src = 'media/take 2 & last.mp3';
    writeFileSync(join(root, src), '');
    writeFileSync(join(root, 'bowbook.yaml'), 'title: Taps\nrights: own\n');
    const cues = [
      { bar: 'A1', seconds: 0.24 },
      { bar: 'A3', seconds: 4.05 },
      { bar: 'A1/2', seconds: 8 },
    ];
    const consent = 'her mother, "on paper", May';
    const line = clipLine(
      { words: 'Slowly, [by Wenna]', src, of: 'nine-pegs', learner: true, consent },
      cues,
    );
    const abc = `${head}|:${bars.repeat(3)}D8:|`;
    const lesson = `---\ntitle: Taps\ndate: 2026-09-15\n---\n\n\`\`\`abc\n${abc}\n\`\`\`\n\n${line}\n`;
    writeFileSync(join(root, 'lessons/taps.md'), lesson);
    const book = await readBook(root);
    expect(book.problems).toEqual([]);
    const clip = book.lessons[0]?.blocks.find(block => block.kind === 'clip');
    expect(clip).toMatchObject({ src, of: 'nine-pegs', words: 'Slowly, (by Wenna)', consent });
    expect(clip?.cues.map(({ bar, seconds }) => ({ bar, seconds }))).toEqual(cues);
    expect(readFileSync(join(root, 'lessons/taps.md'), 'utf8')).toContain(line);
    rmSync(root, { recursive: true, force: true });
  });
});
