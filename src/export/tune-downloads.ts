import { annotateAbc } from '../../shared/notation/annotate-abc.ts';
import type { Study } from '../../shared/study.ts';
import { studyJson } from './study-json.ts';

export const downloadEndings = ['abc', 'json'] as const;

/** A file that a tune's page offers; it stands beside the page. */
export interface Download {
  readonly ending: (typeof downloadEndings)[number];
  readonly content: string;
}

/** A tune to take away: ABC with the computed strokes written in, and the study as JSON. */
export function tuneDownloads(study: Study): readonly Download[] {
  const abc = annotateAbc(study, { marks: 'all', fingers: false, letters: false });
  const json = JSON.stringify(studyJson([study], study.problems), null, 1);
  return [
    { ending: 'abc', content: `${abc.trimEnd()}\n` },
    { ending: 'json', content: `${json}\n` },
  ];
}
