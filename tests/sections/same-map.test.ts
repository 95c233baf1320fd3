import fc from 'fast-check';
import { expect, it } from 'vitest';
import { fractionText } from '../../shared/music/fraction.ts';
import { pitchName } from '../../shared/music/pitch.ts';
import { playedOrder } from '../../shared/music/played-order.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { mapSections } from '../../shared/sections/map-sections.ts';
import type { SectionMap } from '../../shared/sections/section-map.ts';
import { readTune } from '../fingering/read-tune.ts';

/** A tune made up of a few bars in any order: parts of eight bars, as scale steps and lengths. */
interface Made {
  readonly parts: readonly (readonly (readonly Note[])[])[];
}
interface Note {
  readonly step: number;
  /** Quavers. */
  readonly length: number;
}

const note = fc.record({ step: fc.integer({ min: 0, max: 9 }), length: fc.constantFrom(1, 2) });
const bar = fc.array(note, { minLength: 8, maxLength: 8 }).map(notes => {
  const kept: Note[] = [];
  for (const n of notes) {
    const left = 8 - kept.reduce((sum, k) => sum + k.length, 0);
    if (left > 0) kept.push({ ...n, length: Math.min(n.length, left) });
  }
  return kept;
});
const made: fc.Arbitrary<Made> = fc.array(bar, { minLength: 2, maxLength: 5 }).chain(pool =>
  fc.record({
    parts: fc.array(fc.array(fc.constantFrom(...pool), { minLength: 8, maxLength: 8 }), {
      minLength: 2,
      maxLength: 2,
    }),
  }),
);

interface Dress {
  readonly key?: string;
  readonly up?: number;
  readonly unit?: number;
  readonly around?: (note: string, at: number) => string;
  readonly repeats?: 'signs' | 'written-out';
}

const letterOf = (step: number): string =>
  'CDEFGABcdefgab'.charAt(step) || `${'cdefgab'.charAt(step % 7)}'`;

function abcOf(
  tune: Made,
  { key = 'C', up = 0, unit = 8, around, repeats = 'signs' }: Dress,
): string {
  let at = 0;
  const bars = (part: Made['parts'][number]): string =>
    part
      .map(b => {
        const notes = b.map(n => {
          const plain = `${letterOf(n.step + up)}${(n.length * unit) / 8}`;
          return around ? around(plain, at++) : plain;
        });
        return `${notes.join(' ')}|`;
      })
      .join('');
  const body = tune.parts.map(p =>
    repeats === 'signs' ? `|:${bars(p).slice(0, -1)}:|` : `${bars(p)}${bars(p)}|`,
  );
  return `X:1\nT:Made\nM:4/4\nL:1/${unit}\nK:${key}\n${body.join('\n')}\n`;
}

const mapOf = (tune: Made, dress: Dress): SectionMap => mapSections(readTune(abcOf(tune, dress)));

const dresses: readonly (readonly [string, Dress])[] = [
  ['transposing it up a tone', { key: 'D', up: 1 }],
  ['transposing it up a fifth', { key: 'G', up: 4 }],
  ['another L:', { unit: 16 }],
  ['grace notes', { around: (n, i) => (i % 3 === 0 ? `{g}${n}` : n) }],
  ['slurs', { around: (n, i) => (i % 4 === 1 ? `(${n}` : i % 4 === 2 ? `${n})` : n) }],
  ['chord symbols', { around: (n, i) => (i % 5 === 0 ? `"Am"${n}` : n) }],
  ['strokes and fingers', { around: (n, i) => (i % 7 === 0 ? `v!0!${n}` : n) }],
  ['rolls and dots', { around: (n, i) => (i % 2 === 0 ? `~${n}` : `.${n}`) }],
];

it.each(dresses)('%s leaves the map as it was', (_, dress) => {
  fc.assert(
    fc.property(made, tune => {
      expect(mapOf(tune, dress)).toEqual(mapOf(tune, {}));
    }),
    { numRuns: 25 },
  );
});

it('writing repeats out leaves what is to be learnt', () => {
  fc.assert(
    fc.property(made, tune => {
      const [signs, out] = [mapOf(tune, {}), mapOf(tune, { repeats: 'written-out' })];
      const words = (map: SectionMap): string[] =>
        map.toLearn.map(i => `${map.phrases[i]?.label} ${map.phrases[i]?.kin}`);
      expect(words(out)).toEqual(words(signs));
      const twice = [0, 1].flatMap(part => {
        const once = signs.phrases.filter(p => p.part === part).map(p => p.label);
        return [...once, ...once];
      });
      expect(out.phrases.map(p => p.label)).toEqual(twice);
    }),
    { numRuns: 25 },
  );
});

/** Eight bars and a last one for the second time through, so that the part has two endings. */
const ended = fc.record({
  bars: fc
    .array(bar, { minLength: 2, maxLength: 4 })
    .chain(pool => fc.array(fc.constantFrom(...pool), { minLength: 8, maxLength: 8 })),
  second: bar,
});
type Ended = typeof ended extends fc.Arbitrary<infer T> ? T : never;

const pickup = 'G2';

function endedAbc(parts: readonly Ended[], repeats: Dress['repeats']): string {
  const text = (b: readonly Note[]): string =>
    b.map(n => `${letterOf(n.step)}${n.length}`).join('');
  const body = parts.map(({ bars, second }) => {
    const shared = `${bars.slice(0, 7).map(text).join('|')}|`;
    const [first, last] = [text(bars[7] ?? []), text(second)];
    return repeats === 'signs'
      ? `|:${shared}[1${first}:|[2${last}|]`
      : `${shared}${first}|${shared}${last}||`;
  });
  return `X:1\nT:Made\nM:4/4\nL:1/8\nK:C\n${pickup}${repeats === 'signs' ? '' : '|'}${body.join('\n')}\n`;
}

/** The labels of the phrases in the order played: each is called what the phrase of its last bar is. */
function playedLabels(tune: Tune): string[] {
  const map = mapSections(tune);
  const labels: string[] = [];
  let before = '';
  playedOrder(tune).bars.forEach(({ bar: index }) => {
    const here = tune.bars[index];
    const label = map.phrases.find(p => p.bars.includes(index))?.label ?? '';
    if (!here || here.pickup) return;
    const slot = Math.floor((here.number - 1) / map.unit);
    const name = `${here.part} ${slot}`;
    if (name === before) labels[labels.length - 1] = label;
    else labels.push(label);
    before = name;
  });
  return labels;
}

it('writing repeats with endings out leaves the order and the map of what is played', () => {
  let varied = 0;
  fc.assert(
    fc.property(fc.array(ended, { minLength: 1, maxLength: 2 }), parts => {
      const signs = readTune(endedAbc(parts, 'signs'));
      const out = readTune(endedAbc(parts, 'written-out'));
      const sounds = (tune: Tune): string[] =>
        playedOrder(tune).notes.map(n => {
          const e = tune.events[n.event];
          const pitches = e?.kind === 'note' ? e.pitches.map(pitchName).join(' ') : '';
          return `${fractionText(n.onset)} ${fractionText(n.duration)} ${pitches}`;
        });
      expect(sounds(out)).toEqual(sounds(signs));
      expect(playedLabels(out)).toEqual(playedLabels(signs));
      if (new Set(playedLabels(signs)).size > 4) varied++;
    }),
    { numRuns: 40 },
  );
  expect(varied).toBeGreaterThan(10);
});
