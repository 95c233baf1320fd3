import fc from 'fast-check';
import { expect, it } from 'vitest';
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
