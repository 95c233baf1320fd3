import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyEdit, applyEdits, editedJoins } from '../../shared/bowing/apply-edit.ts';
import { singleEdits } from '../../shared/bowing/mends.ts';
import { editsBetween, editText, flips } from '../../shared/bowing/slur-edits.ts';
import { writtenSlurs } from '../../shared/bowing/written-slurs.ts';
import { anyForm, plainForm } from './forms.ts';
import { tuneOf } from './strokes-of.ts';
import { anchorAt, studyOf } from './study-of.ts';

describe('mends against every single edit there is', () => {
  const tune = tuneOf('|:(cd)ef gabc|dedc BAGF|EFGA BcdB|c4 B4:|', 'M:4/4\nL:1/8\nR:reel');
  const anchors = [anchorAt('A4', 'down', 'advanced')];
  const missed = (t: typeof tune): boolean =>
    studyOf(t, { anchors }).problems.some(p => p.rule === 'arrival-missed');

  test('just those that mend it in both passes are offered', () => {
    const [anchor] = studyOf(tune, { anchors }).bowing.anchors;
    const events = anchor?.leadIns[0]?.notes ?? [];
    expect(missed(tune)).toBe(true);
    const form = {
      ...plainForm(events.length),
      written: writtenSlurs(tune)
        .joined.slice(1, events.length)
        .map(x => !x),
    };
    const right = singleEdits(form, events).filter(edit => !missed(applyEdit(tune, edit)));
    const texts = right.map(edit => editText(tune, edit));
    const offered = (anchor?.mends ?? []).map(edit => editText(tune, edit));
    // Repeated pitches, leaps of two strings and phrase ends are limits, which the plain form lacks.
    expect((anchor?.mends.length ?? 0) + (anchor?.moreMends ?? 0)).toBeGreaterThan(20);
    expect(offered).toHaveLength(6);
    for (const t of offered) if (!t.startsWith('retake')) expect(texts).toContain(t);
    expect(right.every(flips)).toBe(true);
  });
});

test('the edits between two bowings lead from one to the other', () => {
  fc.assert(
    fc.property(anyForm(12), anyForm(12), (a, b) => {
      fc.pre(a.notes > 1);
      const to = a.written.map((_, j) => b.written[j] ?? true);
      const events = Array.from({ length: a.notes }, (_, i) => i);
      const start = [false, ...a.written.map(x => !x)];
      const edits = editsBetween(a.written, to, events);
      const end = edits.reduce(editedJoins, start as readonly boolean[]);
      expect(end.slice(1)).toEqual(to.map(x => !x));
      const changed = a.written.filter((x, j) => x !== to[j]).length;
      expect(edits.filter(flips).length % 2).toBe(changed % 2);
    }),
    { numRuns: 300 },
  );
});

test('edits write slurs that read back as the same strokes', () => {
  const tune = tuneOf('|:(c d (e) f g) a b-|b (cd) e|1 (fg) a2 b2:|2 c8|]', 'M:none\nL:1/8');
  const before = writtenSlurs(tune).joined;
  expect(writtenSlurs(applyEdits(tune, [])).joined).toEqual(before);
  const slurred = applyEdit(tune, { kind: 'slur', notes: [5, 6] });
  const back = applyEdit(slurred, { kind: 'drop', notes: [5, 6] });
  expect(writtenSlurs(slurred).joined).not.toEqual(before);
  expect(writtenSlurs(back).joined).toEqual(before);
});

test('a tie to another pitch does not widen a slur that is written after it', () => {
  const tune = tuneOf('c d-e f|', 'M:none\nL:1/8');
  const slurred = applyEdit(tune, { kind: 'slur', notes: [2, 3] });
  expect(writtenSlurs(slurred).joined).toEqual([false, false, false, true]);
});
