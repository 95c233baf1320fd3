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

/** A file of an export, named by the tune and the form. */
export interface ExportedFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

export interface Exported {
  readonly files: readonly ExportedFile[];
  readonly problems: readonly Problem[];
}

/**
 * Tunes of a book in forms that other programs read. A tune whose rights are not known stays where
 * it is, and so does one that cannot be read; both are said. With an error in the book nothing is
 * exported. `ids`: only these tunes, all where it is empty; throws `UsageError` where one is not known.
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
      content: tuneFile(study, form, exportFacts(tune, words)),
    }));
  });
  return { files, problems: kept.map(keptProblem) };
}

/** The whole site as one zip, built afresh in a folder of its own. No bytes where the book has errors. */
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
