import { expect } from 'vitest';
import { applyEdit, applyEdits } from '../../shared/bowing/apply-edit.ts';
import { editText } from '../../shared/bowing/slur-edits.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { onTunes, readTunes } from '../tunes/on-tunes.ts';
import { anchorAt, studyOf } from './study-of.ts';

/** Each tune has an anchor near its end. */
onTunes('the first and last mend, the best plan and the whole-tune plan all mend', 12, tunes => {
  let mended = 0;
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
    for (const edit of [anchor.mends[0], anchor.mends.at(-1)]) {
      if (!edit) continue;
      mended++;
      expect(missed(applyEdit(tune, edit)), editText(tune, edit)).toEqual([]);
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
  expect(whole).toBeGreaterThan(10);
});
