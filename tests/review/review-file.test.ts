import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayText, readDay } from '../../shared/review/day.ts';
import { readMinutes, readReview, writeReview } from '../../shared/review/review-file.ts';

const today = readDay('2026-11-25') ?? 0;
const file = (tunes: unknown, more: object = {}): string =>
  JSON.stringify({ bowbookReview: 1, minutes: 20, tunes, ...more });

describe('a file of ticks', () => {
  it('is read as it was written', () =>
    fc.assert(
      fc.property(
        fc.dictionary(
          fc.stringMatching(/^[a-z0-9-]{1,20}$/),
          fc.record({
            step: fc.integer({ min: 0, max: 5 }),
            last: fc.integer({ min: 0, max: today }),
          }),
        ),
        fc.integer({ min: 5, max: 120 }),
        (tunes, minutes) => {
          const record = { minutes, tunes };
          const read = readReview(writeReview(record), today);
          expect(read.ok && JSON.parse(JSON.stringify(read.record))).toEqual(
            JSON.parse(JSON.stringify(record)),
          );
        },
      ),
    ));

  it('that holds anything else is taken over not at all', () => {
    const good = { 'wet-rope': { step: 2, last: '2026-11-20' } };
    expect(readReview(file(good), today).ok).toBe(true);
    for (const [text, fault] of [
      ['', 'not-json'],
      ['{"bowbookReview":1,"tunes":{"wet-ro', 'not-json'],
      ['[]', 'not-review'],
      ['{"tunes":{}}', 'not-review'],
      [file([]), 'not-review'],
      [file(null), 'not-review'],
      [file(good, { bowbookReview: 2 }), 'newer'],
      [file({ ...good, b: { step: 6, last: '2026-11-20' } }), 'tune'],
      [file({ ...good, b: { step: -1, last: '2026-11-20' } }), 'tune'],
      [file({ ...good, b: { step: 1.5, last: '2026-11-20' } }), 'tune'],
      [file({ ...good, b: { step: '1', last: '2026-11-20' } }), 'tune'],
      [file({ ...good, b: { step: 1, last: '2026-02-30' } }), 'tune'],
      [file({ ...good, b: { step: 1, last: 20000 } }), 'tune'],
      [file({ ...good, b: null }), 'tune'],
      [file({ ...good, '<img src=x>': { step: 1, last: '2026-11-20' } }), 'tune'],
      ['{"bowbookReview":1,"tunes":{"__proto__":{"step":1,"last":"2026-11-20"}}}', 'tune'],
      [file({ ...good, b: { step: 1, last: '2026-11-27' } }), 'day'],
      [' '.repeat(1_000_001), 'too-long'],
    ] as const) {
      const read = readReview(text, today);
      expect([text.slice(0, 80), read.ok ? 'read' : read.fault]).toEqual([
        text.slice(0, 80),
        fault,
      ]);
    }
  });

  it('may hold tomorrow, from the other side of the date line', () => {
    const tomorrow = { a: { step: 0, last: dayText(today + 1) } };
    expect(readReview(file(tomorrow), today).ok).toBe(true);
  });

  it('never throws, and never reads what is no table of ticks', () =>
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.json()), text => {
        expect(readReview(text, today).ok).toBe(false);
      }),
    ));

  it('has whole minutes within bounds', () =>
    expect([1, 20.4, 500, Number.NaN, null, 'x'].map(readMinutes)).toEqual([
      5, 20, 120, 20, 20, 20,
    ]));
});
