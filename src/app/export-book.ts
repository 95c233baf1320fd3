import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { nearest } from '../../shared/nearest.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { siteZipPath } from '../../shared/site-zip-path.ts';
import { exportWords } from '../../shared/words/en/exporting.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { type DownloadEnding, tuneFile } from '../export/tune-downloads.ts';
import { buildSite } from '../incremental/open-builds.ts';
import { exportFacts, mayLeave } from '../pipeline/export-facts.ts';
import { studyBook } from '../pipeline/pipeline.ts';
import type { Progress } from '../pipeline/progress.ts';
import type { StudiedTune } from '../pipeline/study-job.ts';
import { UsageError } from './usage-error.ts';

/** A file of an export, named after the tune and the format. */
export interface ExportedFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

export interface Exported {
  readonly files: readonly ExportedFile[];
  readonly problems: readonly Problem[];
}

/**
 * Exports tunes of a book in the given formats. Leaves out tunes whose rights are not known and tunes
 * that cannot be read, with a problem for each. Exports nothing where the book has errors. `ids` limits
 * the export to these tunes, all where it is empty; throws `UsageError` where the book has no such tune.
 */
export async function exportTunes(
  root: string,
  ids: readonly string[],
  forms: readonly DownloadEnding[],
  progress: Progress,
): Promise<Exported> {
  const { book, tunes, problems: found } = await studyBook(root, progress);
  const words = wordsFor(book.settings.language, book.settings.noteNames);
  checkIds(ids, tunes);
  const asked = tunes.filter(t => ids.length === 0 || ids.includes(t.block.id));
  if (found.some(p => p.severity === 'error')) return { files: [], problems: found };
  const kept = asked.filter(t => t.study === null || !mayLeave(t, false));
  const files = asked.flatMap(tune => {
    const { study } = tune;
    if (study === null || !mayLeave(tune, false)) return [];
    return forms.map(form => ({
      name: `${tune.block.id}.${form}`,
      content: tuneFile(study, form, exportFacts(tune, study.tune, words)),
    }));
  });
  return { files, problems: kept.map(keptProblem) };
}

/** Builds the site in a temporary folder and returns it as a zip; `zip` is null where the book has errors. */
export async function exportSite(
  root: string,
  progress: Progress,
): Promise<{ readonly zip: Uint8Array | null; readonly problems: readonly Problem[] }> {
  const work = mkdtempSync(join(tmpdir(), 'bowbook-export-'));
  try {
    const out = join(work, 'site');
    const { problems, failed } = await buildSite({ root, out, isPrivate: false, progress });
    return { zip: failed ? null : readFileSync(join(out, siteZipPath)), problems };
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

function checkIds(ids: readonly string[], tunes: readonly StudiedTune[]): void {
  const known = tunes.map(t => t.block.id);
  for (const id of ids) {
    if (!known.includes(id)) throw new UsageError(exportWords.unknownTune(id, nearest(id, known)));
  }
}

function keptProblem({ block, study }: StudiedTune): Problem {
  const rule = study === null ? 'export-unreadable' : 'export-withheld';
  return problem(rule, block.place, { facts: { tune: block.id } });
}
