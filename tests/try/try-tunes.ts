import type { AnchorRequest } from '../../shared/bowing/bowing.ts';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { parseBarRange } from '../../shared/music/bar-range.ts';
import type { Direction, Tune } from '../../shared/music/tune.ts';
import type { StudyRequest } from '../../shared/study.ts';
import { openTrial, type Trial } from '../../shared/trying/trial.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { type NamedTune, readTunes } from '../tunes/on-tunes.ts';

/** What `explain` asks of a bare tune with `--anchor` and `--arrive`. */
export function requestFor(bars: string, start: Direction): StudyRequest {
  const range = parseBarRange(bars);
  if (!range) throw new Error(`no passage: ${bars}`);
  const own = { level: null, preset: null, asked: [], place: null };
  const anchor: AnchorRequest = { id: 'anchor', bars: range, start, ...own };
  return {
    tuning: fiddleTuning,
    bowing: defaultBowing,
    start: null,
    anchors: [anchor],
    unit: null,
  };
}

export function tuneOf(abc: string): Tune {
  const tune = parseTunes({ text: abc, file: 'tune.abc', line: 1, indent: 0 }).tunes[0];
  if (!tune) throw new Error(`cannot be read: ${abc}`);
  return tune;
}

export function trialOf(abc: string, bars: string, start: Direction): Trial {
  const trial = openTrial(tuneOf(abc), requestFor(bars, start), 'anchor', {
    level: null,
    preset: null,
  });
  if (!trial) throw new Error('there is nothing to try');
  return trial;
}

/** Tunes with a passage to reach: the last full bar but one. */
export const withPassage = (tunes: readonly NamedTune[]): { abc: string; bars: string }[] =>
  tunes.flatMap(named =>
    readTunes([named]).flatMap(tune => {
      const bars = tune.bars.filter(b => b.end > b.first).at(-2)?.name;
      return bars ? [{ abc: named.abc, bars }] : [];
    }),
  );

/** The tune of the demo book's second lesson. */
export const weighbridge = `X:1
T:Left at the Weighbridge, first try
C:Wenna Harkle, 2023
R:jig
M:6/8
L:1/8
K:G
D|:GBG AFD|EGB (dcB)|cec BdB|(GFE) D2 d|
gfe dBG|(ABc) (BAG)|cec BGE|[1 (DE)F G2 D:|[2 (DE)F G2 d||
|:gag fdf|(efg) dBG|cec BdB|(cBA) (Bcd)|
gag fdf|(efg) dBG|cec BGE|[1 (DE)F G2 d:|[2 (DE)F G2|]
`;
