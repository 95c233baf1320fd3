import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { annotateAbc } from '../../shared/notation/annotate-abc.ts';
import { studyTune } from '../../shared/study.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { importTunes } from '../../src/app/import-tunes.ts';
import { bookOf } from '../../src/read/book-of.ts';

/** Inputs that the fuzzer found, or that were found on the way, each cut down to what it took. */
const read = (text: string) => parseTunes({ text, file: 'a.abc', line: 1, indent: 0 });
const rulesOf = (text: string) => read(text).problems.map(p => p.rule);
const head = 'X:1\nT:T\nM:4/4\nL:1/8\nK:D\n';

it('a note of no length that can be counted leaves the tune out, at its place', () => {
  const { tunes, problems } = read(`X:1\nT:T\nM:4/4\nL::1/4\nK:D\nA/2 B|`);
  expect(tunes).toEqual([]);
  expect(problems.map(p => [p.rule, p.place?.line])).toContainEqual(['tune-past-limit', 6]);
});

it.each([
  ['an ending of a number that no list could hold', `${head}|:A8|[99999999999 B8:|`],
  ['a repeat of thousands of times', `${head}|:A8${':'.repeat(1500)}|`],
  ['a unit past counting', 'X:1\nT:T\nL:1/99999999999999999999\nK:D\nA|'],
  ['a metre past counting', 'X:1\nT:T\nM:99999999999999/4\nK:D\nA|'],
  ['a metre that filled the memory', 'X:1\nT:T\nM:4444444444/4\nL:1/8\nK:D\nA|'],
  ['such a metre in a line', 'X:1\nT:T\nK:D\nA[M:4/4444444444]A|'],
  ['a tempo past counting', 'X:1\nT:T\nQ:1/0=99999999999999999999\nK:D\nA|'],
  ['an order of parts of thousands of brackets', `X:1\nT:T\nP:${'('.repeat(1900)}A\nK:D\nP:A\nA|`],
  ['a rest of thousands of bars', `${head}Z999999|A8|`],
])('%s is read, or said', (_, text) => {
  const { tunes, problems } = read(text);
  expect(tunes.length + problems.length).toBeGreaterThan(0);
});

it('a long sum of odd tuplets stays exact', () => {
  const bar = '(3abc (5abcde (7abcdefg (9abcdefgab |';
  const [tune] = read(`X:1\nT:T\nM:none\nL:1/64\nK:D\n${bar.repeat(20)}`).tunes;
  expect(tune?.bars).toHaveLength(20);
});

it('strokes are written into a tune with a quotation left open', () => {
  const [tune] = read(`${head}A2 B2 "fDatab\n"G"c2 d2|`).tunes;
  if (!tune) throw new Error('no tune');
  const request = {
    tuning: fiddleTuning,
    bowing: defaultBowing,
    start: null,
    anchors: [],
    unit: null,
  };
  const study = studyTune(tune, request);
  const written = annotateAbc(study, { marks: 'all', fingers: true, letters: null });
  expect(written.replace(/!\d!|[uv]/g, '')).toContain('A2 B2 "fDatab');
});

it('a failing line is found in a tune of a thousand lines', () => {
  const lines = Array.from({ length: 1000 }, (_, i) => (i === 700 ? '[!e' : 'A8|'));
  const { problems } = read(head + lines.join('\n'));
  expect(problems.map(p => [p.rule, p.place?.line])).toContainEqual(['abc-unreadable', 706]);
});

it.each([
  ['an alias of nothing', 'title: T\nteacher: *nobody\n', 2],
  ['an alias that unfolds without end', bomb(), 1],
])('%s is a problem of the settings', (_, yaml, line) => {
  const { problems } = bookOf('b', { texts: new Map([['bowbook.yaml', yaml]]), media: [] });
  const found = problems.find(p => p.rule === 'yaml-broken');
  expect(found?.place?.line).toBeGreaterThanOrEqual(line);
});

function bomb(): string {
  const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x]'];
  for (let i = 1; i < 9; i++) {
    lines.push(`a${i}: &a${i} [${Array.from({ length: 9 }, () => `*a${i - 1}`).join(', ')}]`);
  }
  return `${lines.join('\n')}\n`;
}

it('music that begins with three colons is imported once, and its page has no error', async () => {
  const root = mkdtempSync(join(tmpdir(), 'bowbook-import-'));
  try {
    writeFileSync(join(root, 'bowbook.yaml'), 'title: T\n');
    const file = join(root, 'a.abc');
    writeFileSync(file, 'X:1\nT:Odd\nK:D\n|:ABcd\n:::efga:|\n');
    const options = { root, files: [file], type: null, rights: null, learnedFrom: null };
    const first = await importTunes({ ...options, dryRun: false });
    expect(first.written).toEqual(['tunes/odd.md']);
    const again = await importTunes({ ...options, dryRun: false });
    expect([again.present, again.written]).toEqual([1, []]);
  } finally {
    rmSync(root, { recursive: true, force: true });
  }
});

it('a word of ABC that reads as a name of an object is a name', () => {
  expect(rulesOf('X:1\nT:__proto__\nP:constructor\nK:D\nP:toString\nA8|')).not.toContain(
    'abc-unreadable',
  );
});
