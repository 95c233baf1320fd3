import type { Problem } from '../../shared/problem.ts';
import type { TuneData } from '../../shared/tune-data.ts';
import type { Words } from '../../shared/words/words-for.ts';
import { tuneDownloads } from '../export/tune-downloads.ts';
import type { BuiltTune } from '../pages/built-tune.ts';
import { type Opening, openingOf } from '../pages/openings.ts';
import { mayShow } from '../pages/page-context.ts';
import { scriptCall } from '../pages/script-call.ts';
import { tuneCard } from '../pages/tune-card.ts';
import { exportFacts, mayLeave } from './export-facts.ts';
import type { MadeFile, TuneSummary } from './made-tune.ts';
import type { StudiedTune } from './study-job.ts';
import type { TuneJob } from './tune-job.ts';

type BareFile = Omit<MadeFile, 'inputHash'>;

/** The script and downloads of a tune; none where its rights are unknown or its ABC could not be parsed. */
export function tuneFiles(
  studied: StudiedTune,
  { isPrivate }: Pick<TuneJob, 'isPrivate'>,
  words: Words,
): readonly BareFile[] {
  const { block, request, study } = studied;
  if (study === null || !mayLeave(studied, isPrivate)) return [];
  const { id } = block;
  const { tune } = study;
  const data: TuneData = { id, title: tune.title, tune, request };
  return [
    { path: `tunes/${id}.js`, content: scriptCall('bowbookTune', data) },
    ...tuneDownloads(study, exportFacts(studied, study.tune, words)).map(({ ending, content }) => ({
      path: `tunes/${id}.${ending}`,
      content,
    })),
  ];
}

/** The summary of a tune, for lists and messages. `files`: its script and downloads. */
export const summaryOf = (
  built: BuiltTune,
  { isPrivate, settings }: Pick<TuneJob, 'isPrivate' | 'settings'>,
  words: Words,
  files: readonly BareFile[],
  problems: readonly Problem[],
): TuneSummary => ({
  card: tuneCard(built, isPrivate, settings.bowing, words),
  isStudied: built.study !== null,
  problems,
  files: files.map(({ path }) => path),
});

/** The first phrase of a tune; null where the notes may not be shown, or could not be drawn. */
export const openingIn = (built: BuiltTune, job: Pick<TuneJob, 'isPrivate'>): Opening | null =>
  mayShow(built, job) ? openingOf(built) : null;
