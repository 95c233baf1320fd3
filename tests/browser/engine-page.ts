// Bundled for the browser by `engine.test.ts`: the engine as a page would run it.

import type { Tune } from '../../shared/music/tune.ts';
import { type StudyRequest, studyTune } from '../../shared/study.ts';
import { studyJson } from '../../src/export/study-json.ts';

Object.assign(globalThis, {
  studyAsJson: (tune: Tune, request: StudyRequest): string => {
    const study = studyTune(tune, request);
    return JSON.stringify(studyJson([study], study.problems));
  },
});
