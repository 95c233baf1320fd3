import type { Tune } from './music/tune.ts';
import type { StudyRequest } from './study.ts';

/**
 * A tune for the pages' scripts, which study it with the same engine as the build. The site holds it as a
 * classic script, `tunes/<id>.js`, which calls `bowbookTune` with it, so that it also loads from
 * `file://`. Pages load it when it is first needed.
 */
export interface TuneData {
  readonly id: string;
  readonly title: string;
  readonly tune: Tune;
  readonly request: StudyRequest;
}
