import { afterEach, describe, expect, it } from 'vitest';
import { dayDate, dayText, localDay, readDay } from '../../shared/review/day.ts';

const zone = process.env.TZ;

afterEach(() => {
  if (zone === undefined) delete process.env.TZ;
  else process.env.TZ = zone;
});

/** What the calendar on the wall says at this moment in that place. */
function dayIn(place: string, moment: string): string {
  process.env.TZ = place;
  return dayText(localDay(new Date(moment)));
}

describe('a day', () => {
  it('is the one on the wall of the place', () => {
    const moment = '2026-11-24T23:30:00Z';
    expect(dayIn('Europe/London', moment)).toBe('2026-11-24');
    expect(dayIn('Pacific/Auckland', moment)).toBe('2026-11-25');
    expect(dayIn('America/Los_Angeles', moment)).toBe('2026-11-24');
    expect(dayIn('Pacific/Kiritimati', '2026-12-31T10:00:00Z')).toBe('2027-01-01');
    expect(dayIn('Pacific/Pago_Pago', '2027-01-01T10:00:00Z')).toBe('2026-12-31');
  });

  it('follows the day before where clocks go forward or back', () => {
    // British Summer Time begins on 29 March 2026 and ends on 25 October (23 and 25 hours long).
    for (const [before, after] of [
      ['2026-03-28T12:00:00Z', '2026-03-29T12:00:00Z'],
      ['2026-03-29T00:10:00Z', '2026-03-29T23:30:00Z'],
      ['2026-10-24T12:00:00Z', '2026-10-25T12:00:00Z'],
      ['2026-10-24T23:10:00Z', '2026-10-26T00:10:00Z'],
    ] as const) {
      process.env.TZ = 'Europe/London';
      const days = localDay(new Date(after)) - localDay(new Date(before));
      expect([before, days]).toEqual([before, 1]);
    }
    // At midnight itself, where clocks go forward at midnight and there is no such moment.
    expect(dayIn('America/Santiago', '2026-09-06T04:30:00Z')).toBe('2026-09-06');
    expect(dayIn('America/Santiago', '2026-09-06T03:30:00Z')).toBe('2026-09-05');
  });

  it('is read and written as the calendar has it', () => {
    expect(readDay('1970-01-01')).toBe(0);
    expect(readDay('2026-11-25')).toBe(20782);
    expect(dayText(20782)).toBe('2026-11-25');
    expect(dayDate(20782).toISOString()).toBe('2026-11-25T00:00:00.000Z');
    expect(readDay('2028-02-29')).not.toBeNull();
    for (const text of ['2027-02-29', '2026-13-01', '2026-1-1', '26-11-25', '', '2026-11-25T00']) {
      expect([text, readDay(text)]).toEqual([text, null]);
    }
  });
});
