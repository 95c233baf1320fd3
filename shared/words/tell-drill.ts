import type { Drill, NoDrill } from '../drills/drill.ts';
import type { DrillSource } from '../drills/drill-source.ts';
import type { NoteNames } from '../music/note-names.ts';
import type { DrillLanguage } from './drill-phrases.ts';
import { tellArrive, tellInto } from './tell-arrivals.ts';
import { tellCount } from './tell-count.ts';
import { tellForks, tellSame } from './tell-map-drills.ts';
import { tellCall, tellGaps, tellStart } from './tell-note-drills.ts';
import type { Telling, ToldDrill, ToldSource } from './told-drill.ts';

/** Why a tune gives no drill of some kind: clauses, and the sentence around one. */
export interface NoDrillPhrases {
  readonly sentence: (why: string) => string;
  readonly why: Readonly<Record<NoDrill, string>>;
}

/** "This tune gives no such drill: none of its phrases goes on in two ways." */
export const noDrillSentence = (
  { noDrill }: { readonly noDrill: NoDrillPhrases },
  why: NoDrill,
): string => noDrill.sentence(noDrill.why[why]);

/** A drill in words: question, choices with what is wrong about each, answer and why. */
export const tellDrill = (
  language: DrillLanguage,
  source: DrillSource,
  drill: Drill,
  names: NoteNames,
): ToldDrill => ({
  kind: drill.kind,
  level: drill.level,
  title: language.drillTitles[drill.kind],
  levelSays: language.levelSays[drill.kind][drill.level],
  ...tell(language, { ...source, names }, drill),
});

function tell(language: DrillLanguage, source: ToldSource, drill: Drill): Telling {
  switch (drill.kind) {
    case 'call':
      return tellCall(language, source, drill);
    case 'gaps':
      return tellGaps(language, source, drill);
    case 'count':
      return tellCount(language, source, drill);
    case 'arrive':
      return tellArrive(language, source, drill);
    case 'start':
      return tellStart(language, source, drill);
    case 'same':
      return tellSame(language, source, drill);
    case 'forks':
      return tellForks(language, source, drill);
    case 'into':
      return tellInto(language, source, drill);
  }
}
