import type { Drill } from '../../drills/drill.ts';
import type { DrillSource } from '../../drills/drill-source.ts';
import type { NoteNames } from '../../music/note-names.ts';
import type { ToldDrill, ToldSource } from '../told-drill.ts';
import { drillTitles, levelSays } from './drills.ts';
import { tellArrive, tellCount, tellInto } from './tell-bowing-drills.ts';
import { tellForks, tellSame } from './tell-map-drills.ts';
import { type Telling, tellCall, tellGaps, tellStart } from './tell-note-drills.ts';

/** A drill in words: question, choices with what is wrong about each, answer and why. */
export const tellDrill = (source: DrillSource, drill: Drill, names: NoteNames): ToldDrill => ({
  kind: drill.kind,
  level: drill.level,
  title: drillTitles[drill.kind],
  levelSays: levelSays[drill.kind][drill.level],
  ...tell({ ...source, names }, drill),
});

function tell(source: ToldSource, drill: Drill): Telling {
  switch (drill.kind) {
    case 'call':
      return tellCall(source, drill);
    case 'gaps':
      return tellGaps(source, drill);
    case 'count':
      return tellCount(source, drill);
    case 'arrive':
      return tellArrive(source, drill);
    case 'start':
      return tellStart(source, drill);
    case 'same':
      return tellSame(source, drill);
    case 'forks':
      return tellForks(source, drill);
    case 'into':
      return tellInto(source, drill);
  }
}
