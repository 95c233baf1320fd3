import type { Study } from '../../shared/study.ts';
import { abcFile } from './abc-file.ts';
import { midiFile } from './midi.ts';
import { type ExportFacts, musicXml } from './musicxml.ts';
import { studyJson } from './study-json.ts';

export const downloadEndings = ['abc', 'mid', 'musicxml', 'json'] as const;
export type DownloadEnding = (typeof downloadEndings)[number];

/** A file that a tune's page offers for download; it stands beside the page. */
export interface Download {
  readonly ending: DownloadEnding;
  readonly content: string | Uint8Array;
}

/** A tune in every format that other programs read. */
export function tuneDownloads(study: Study, facts: ExportFacts): readonly Download[] {
  return downloadEndings.map(ending => ({ ending, content: tuneFile(study, ending, facts) }));
}

/** A tune in one format. The same study and facts give the same bytes. */
export function tuneFile(
  study: Study,
  ending: DownloadEnding,
  facts: ExportFacts,
): string | Uint8Array {
  switch (ending) {
    case 'abc':
      return abcFile(study, facts.credits);
    case 'mid':
      return midiFile(study, facts.tempo);
    case 'musicxml':
      return musicXml(study, facts);
    case 'json':
      return `${JSON.stringify(studyJson([study], study.problems))}\n`;
  }
}
