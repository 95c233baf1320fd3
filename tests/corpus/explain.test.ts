import { describe, expect, it } from 'vitest';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { parseBarRange } from '../../shared/music/bar-range.ts';
import { studyTune } from '../../shared/study.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { studyJson } from '../../src/export/study-json.ts';
import { corpusFiles, corpusMissing } from './corpus.ts';

if (corpusMissing !== null) console.warn(corpusMissing);

describe.skipIf(corpusMissing !== null)('a thousand real tunes', () => {
  it('each has a study or a placed message, and none crashes', { timeout: 300_000 }, () => {
    let tunes = 0;
    let studied = 0;
    let withMessages = 0;
    const lost: string[] = [];
    for (const file of corpusFiles()) {
      const wanted = [...file.text.matchAll(/^X:\s*(\d+)/gm)].map(m => m[1] ?? '');
      for (const number of wanted) {
        tunes++;
        const source = { text: file.text, file: file.name, line: 1, indent: 0 };
        const { tunes: parsed, problems } = parseTunes(source, { number });
        const placed = problems.filter(p => p.place !== null);
        const tune = parsed[0];
        if (tune && tune.bars.length > 0) {
          studied++;
          const last = tune.parts.at(-1)?.bars.at(-1) ?? -1;
          const bars = parseBarRange(tune.bars[last]?.name ?? '');
          const study = studyTune(tune, {
            tuning: fiddleTuning,
            bowing: defaultBowing,
            start: null,
            unit: null,
            anchors:
              bars === null
                ? []
                : [{ id: 'end', bars, start: 'down', level: null, preset: null, place: null }],
          });
          const json = JSON.stringify(studyJson([study], [...problems, ...study.problems]));
          expect(json).toContain('"bowbookStudy":1');
          if (placed.length + study.problems.length > 0) withMessages++;
        } else if (placed.length === 0) lost.push(`${file.name} X:${number}`);
      }
    }
    console.log(`${tunes} tunes: ${studied} have a study, ${withMessages} of them messages too`);
    expect(tunes).toBe(1034);
    expect(lost).toEqual([]);
  });
});
