// Bundled for the browser by `try.test.ts`: what the place to try strokes works out, as its page does.

import type { Tune } from '../../shared/music/tune.ts';
import type { StudyRequest } from '../../shared/study.ts';
import { type Bowing, openTrial, playBowing } from '../../shared/trying/trial.ts';
import { studyJson } from '../../src/export/study-json.ts';

Object.assign(globalThis, {
  tryBowings: (tune: Tune, request: StudyRequest, bowings: readonly Bowing[]): string[] => {
    const trial = openTrial(tune, request, 'anchor', { level: null, preset: null });
    if (!trial) throw new Error('nothing to try');
    return bowings.map(bowing => {
      const { study } = playBowing(trial, bowing);
      return JSON.stringify(studyJson([study], study.problems));
    });
  },
});
