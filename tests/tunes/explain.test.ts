import { describe, expect } from 'vitest';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { parseBarRange } from '../../shared/music/bar-range.ts';
import { studyTune } from '../../shared/study.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { studyJson } from '../../src/export/study-json.ts';
import { onTunes } from './on-tunes.ts';

describe('a tune with an anchor on its last bar', () => {
  onTunes('has a study or a placed message, and does not crash', 4, tunes => {
    let studied = 0;
    const lost: string[] = [];
    for (const { name, abc } of tunes) {
      const { tunes: parsed, problems } = parseTunes({ text: abc, file: name, line: 1, indent: 0 });
      const [tune] = parsed;
      if (!tune || tune.bars.length === 0) {
        if (problems.every(p => p.place === null)) lost.push(name);
        continue;
      }
      studied++;
      const last = tune.parts.at(-1)?.bars.at(-1) ?? -1;
      const bars = parseBarRange(tune.bars[last]?.name ?? '');
      const anchor = { id: 'end', start: 'down', level: null, preset: null, place: null } as const;
      const study = studyTune(tune, {
        tuning: fiddleTuning,
        bowing: defaultBowing,
        start: null,
        unit: null,
        anchors: bars === null ? [] : [{ ...anchor, bars }],
      });
      const json = JSON.stringify(studyJson([study], [...problems, ...study.problems]));
      expect(json).toContain('"bowbookStudy":1');
    }
    expect(lost).toEqual([]);
    expect(studied).toBeGreaterThan(0.95 * tunes.length);
  });
});
