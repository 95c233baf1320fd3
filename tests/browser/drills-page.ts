// Bundled for the browser by `drills.test.ts`: the drills as a page would make them.

import type { DrillAsk } from '../../shared/drills/drill.ts';
import { drillSource } from '../../shared/drills/drill-source.ts';
import { makeDrill } from '../../shared/drills/make-drill.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { type StudyRequest, studyTune } from '../../shared/study.ts';

Object.assign(globalThis, {
  drillsAsJson: (tune: Tune, request: StudyRequest, asks: readonly DrillAsk[]): string => {
    const source = drillSource(studyTune(tune, request), request);
    return JSON.stringify(asks.map(ask => makeDrill(source, ask)));
  },
});
