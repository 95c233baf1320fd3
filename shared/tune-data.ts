import type { Tune } from './music/tune.ts';
import type { StudyRequest } from './study.ts';

/**
 * What a page's scripts know of a tune: enough to study it there with the same engine as the build.
 * The site has it as a classic script, `tunes/<id>.js`, which calls `bowbookTune` with it, so that
 * it loads from a folder too; pages ask for it when it is first needed.
 */
export interface TuneData {
  readonly id: string;
  readonly title: string;
  readonly tune: Tune;
  readonly request: StudyRequest;
}
