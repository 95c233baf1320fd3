import { readFileSync, readdirSync } from 'node:fs';
import { test } from 'vitest';
import { applyEdits } from '../../shared/bowing/apply-edit.ts';
import { editText } from '../../shared/bowing/slur-edits.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { anchorAt, studyOf } from './study-of.ts';
test('x', () => {
  let n = 0, kinds: Record<string, number> = {};
  for (const f of readdirSync('../shared/corpus').filter(f => f.endsWith('.abc'))) for (const tune of parseTunes({ text: readFileSync('../shared/corpus/' + f, 'utf8'), file: 'x', line: 1, indent: 0 }).tunes) {
      const bar = tune.bars.filter(b => b.end > b.first).at(-2)?.name;
      if (!bar) continue;
    const anchors = [anchorAt(bar, 'up')];
    const st = studyOf(tune, { anchors });
    const w = st.bowing.whole; kinds[w?.kind ?? 'none'] = (kinds[w?.kind ?? 'none'] ?? 0) + 1; if (w?.kind !== 'solved') continue;
    const after = studyOf(applyEdits(tune, w.changes), { anchors });
    if (!after.bowing.whole) continue;
    if (n++ > 3) continue;
    console.log(f, tune.events[0]!.place.line, tune.title, tune.bars.map(b => b.name + (b.opensRepeat?'|:':'') + (b.closesRepeat>1?':|':'')).join(' '));
    console.log(st.performance.bars.map(b => tune.bars[b.bar]!.name).join(' '));
    console.log(w.changes.map(c => editText(tune, c)), st.bowing.repeats.map(r => r.starts.join()), after.bowing.repeats.map(r => r.starts.join()), JSON.stringify(after.bowing.whole));
  }
  console.log(n, kinds);
}, 200000);
