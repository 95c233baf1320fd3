import type { Problem } from '../shared/problem.ts';
import type { TuneData } from '../shared/tune-data.ts';
import { type Words, wordsFor } from '../shared/words/words-for.ts';
import { buildTune, drawTune, type StudiedTune } from './build-tune.ts';
import { tuneDownloads } from './export/tune-downloads.ts';
import { exportFacts, mayLeave } from './export-facts.ts';
import type { BuiltTune } from './pages/built-tune.ts';
import { scriptCall } from './pages/script-call.ts';
import { type TuneCard, tuneCard } from './pages/tune-card.ts';
import type { TuneJob } from './tune-jobs.ts';

/** What a build holds of every tune at once. */
export interface TuneNote {
  readonly id: string;
  readonly card: TuneCard;
  /** Its ABC could be read. */
  readonly isStudied: boolean;
  readonly problems: readonly Problem[];
  /** Paths of the files that stand beside its page. */
  readonly files: readonly string[];
}

/** Everything made of one tune: read back from the cache whole, one at a time. */
export interface TuneProduct {
  readonly note: TuneNote;
  /** Its study and its drawings, for the pages that show it. */
  readonly built: BuiltTune;
  readonly files: readonly TuneFile[];
}

/** A file that stands beside the page of a tune. */
export interface TuneFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** Studies and draws one tune and makes its files. This is what a worker runs. */
export function makeTune(job: TuneJob): TuneProduct {
  const { block, anchors, plans, clips, drills, settings, isPrivate } = job;
  const words = wordsFor(settings.language, settings.noteNames);
  const studied = buildTune(block, anchors, plans, clips, drills, settings);
  const { built, problems } = drawTune(studied, words);
  const files = tuneFiles(studied, isPrivate, words);
  return {
    note: {
      id: block.id,
      card: tuneCard(built, isPrivate, words),
      isStudied: studied.study !== null,
      problems: [...studied.problems, ...problems],
      files: files.map(file => file.path),
    },
    built,
    files,
  };
}

/** The files for one tune: none where its rights are not known. */
function tuneFiles(studied: StudiedTune, isPrivate: boolean, words: Words): TuneFile[] {
  const { block, request, study } = studied;
  if (study === null || !mayLeave(studied, isPrivate)) return [];
  const { id } = block;
  const { tune } = study;
  const data: TuneData = { id, title: tune.title, tune, request };
  return [
    { path: `tunes/${id}.js`, content: scriptCall('bowbookTune', data) },
    ...tuneDownloads(study, exportFacts(studied, words)).map(({ ending, content }) => ({
      path: `tunes/${id}.${ending}`,
      content,
    })),
  ];
}
