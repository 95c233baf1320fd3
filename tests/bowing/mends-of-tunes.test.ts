import { expect } from 'vitest';
import { applyEdit, applyEdits } from '../../shared/bowing/apply-edit.ts';
import { strokeAt } from '../../shared/bowing/lay-strokes.ts';
import { editText } from '../../shared/bowing/slur-edits.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { onTunes, readTunes } from '../tunes/on-tunes.ts';
import { anchorAt, studyOf } from './study-of.ts';

/** Each tune has an anchor near its end. */
onTunes('the first and last mend, the best plan and the whole-tune plan all mend', 12, tunes => {
  let mended = 0;
  let lifted = 0;
  let whole = 0;
  for (const tune of readTunes(tunes)) {
    const bar = tune.bars.filter(b => b.end > b.first).at(-2)?.name;
    if (!bar) continue;
    const anchors = [anchorAt(bar, 'up')];
    const missed = (t: Tune): string[] =>
      studyOf(t, { anchors }).problems.flatMap(p =>
        p.rule === 'arrival-missed' ? `${tune.title}: ${bar}` : [],
      );
    const { bowing } = studyOf(tune, { anchors });
    const [anchor] = bowing.anchors;
    if (!anchor) continue;
    const conflicts = (t: Tune): number =>
      studyOf(t, { anchors }).problems.filter(p => p.rule === 'stroke-conflict').length;
    const lifts = anchor.mends.filter(edit => edit.kind === 'retake');
    for (const edit of new Set([anchor.mends[0], anchor.mends.at(-1), ...lifts])) {
      if (!edit) continue;
      mended++;
      const written = applyEdit(tune, edit);
      expect(missed(written), editText(tune, edit)).toEqual([]);
      expect(conflicts(written), editText(tune, edit)).toBeLessThanOrEqual(conflicts(tune));
      if (edit.kind === 'retake') {
        lifted++;
        // The bow does lift there, and goes as it went before.
        const { performance, bowing: after } = studyOf(written, { anchors });
        const strokes = performance.notes.map((_, k) => strokeAt(after.plan, k));
        const isLifted = performance.notes.some(
          (n, k) => n.event === edit.before && strokes[k]?.retake,
        );
        expect(isLifted, editText(tune, edit)).toBe(true);
        expect(strokes[0]?.direction).toBe(strokeAt(bowing.plan, 0).direction);
      }
    }
    const plans = anchor.leadIns.length === 1 ? (anchor.leadIns[0]?.plans ?? []) : [];
    if (plans[0]) expect(missed(applyEdits(tune, plans[0].changes))).toEqual([]);
    if (bowing.whole?.kind === 'solved') {
      whole++;
      const after = studyOf(applyEdits(tune, bowing.whole.changes), { anchors });
      expect(after.problems.filter(p => /arrival|conflict/.test(p.rule))).toEqual([]);
      expect(
        after.bowing.repeats.filter(r => r.secondPass === 'reversed'),
        tune.title,
      ).toEqual([]);
      expect(after.bowing.whole).toBeUndefined();
    }
  }
  expect(mended).toBeGreaterThan(10);
  expect(lifted).toBeGreaterThan(10);
  expect(whole).toBeGreaterThan(10);
});
