import { join } from 'node:path';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { type Study, studyTune } from '../../shared/study.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { composeStudy } from '../engrave/compose-study.ts';
import { type NamedTune, readTunes } from '../tunes/on-tunes.ts';

const root = join(import.meta.dirname, '../..');

/** A study that asks for nothing: no anchors, no first stroke, a fiddle as usual. */
export const studyOf = (tune: Tune): Study =>
  studyTune(tune, {
    tuning: fiddleTuning,
    bowing: defaultBowing,
    start: null,
    anchors: [],
    unit: null,
  });

/** Reads and studies a text of one tune. */
export function studyText(text: string): Study {
  const [tune] = parseTunes({ text, file: 'test.abc', line: 1, indent: 0 }).tunes;
  if (!tune) throw new Error(`no tune in ${text}`);
  return studyOf(tune);
}

/** The studies of the demo book, with what its lessons ask. */
export async function demoStudies(): Promise<readonly Study[]> {
  const { tunes } = await studyBook(join(root, 'content'), () => {});
  return tunes.flatMap(t => (t.study === null ? [] : [t.study]));
}

/** Studies without plans, of the tunes that can be read. */
export const studiesOf = (tunes: readonly NamedTune[]): Study[] =>
  tunes.filter(t => readTunes([t]).length > 0).map(t => composeStudy(t.abc));
