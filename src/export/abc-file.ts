import { annotateAbc } from '../../shared/notation/annotate-abc.ts';
import type { Study } from '../../shared/study.ts';
import { exportWords } from '../../shared/words/en/exporting.ts';

/**
 * A tune as a file of ABC 2.1: the teacher's text with strokes and fingers added. A stroke is written
 * where it is the same in every pass. Fields before the `X:` apply to the tune (section 2.2.2) and are
 * kept; `X:1` is added where there is none, since the standard requires one. Credits and the program's
 * name go into the standard's directives for them.
 */
export function abcFile(study: Study, credits: string): string {
  const annotated = annotateAbc(study, { marks: 'all', fingers: true, letters: null }).trim();
  const numbered = /^X:/m.test(annotated);
  const header = numbered ? fileHeader(study.tune.source.text) : '';
  return [
    '%abc-2.1',
    '%%abc-charset utf-8',
    `%%abc-creator ${exportWords.software}`,
    `%%abc-copyright ${credits.replace(/\s+/g, ' ')}`,
    ...(header === '' ? [] : [header]),
    '',
    numbered ? annotated : `X:1\n${annotated}`,
    '',
  ].join('\n');
}

/** The lines of fields and directives before the first tune of a text. */
function fileHeader(text: string): string {
  const first = text.search(/^X:/m);
  const lines = text.slice(0, Math.max(0, first)).split('\n');
  return lines.filter(line => /^(?:[A-Za-z+]:|%%)/.test(line)).join('\n');
}
