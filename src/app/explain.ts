import { existsSync, statSync } from 'node:fs';
import { dirname, extname, join, relative, resolve } from 'node:path';
import type { AnchorRequest, Direction } from '../../shared/bowing/bowing.ts';
import { defaultBowing } from '../../shared/bowing/default-settings.ts';
import { bowingContext } from '../../shared/bowing/lead-in-of.ts';
import { type Proposal, proposeBowings } from '../../shared/bowing/propose-bowings.ts';
import type { BowingSettings, Level } from '../../shared/bowing/settings.ts';
import { fiddleTuning } from '../../shared/fingering/tunings.ts';
import { parseBarRange } from '../../shared/music/bar-range.ts';
import { nearest } from '../../shared/nearest.ts';
import type { Problem } from '../../shared/problem.ts';
import { type Study, type StudyRequest, studyTune } from '../../shared/study.ts';
import { parseTunes } from '../abc/parse-tune.ts';
import { studyJson } from '../export/study-json.ts';
import { studyText } from '../export/study-text.ts';
import { studyBook } from '../pipeline/pipeline.ts';
import { readAbcFile } from './read-abc-file.ts';
import { UsageError } from './usage-error.ts';

export interface ExplainOptions {
  readonly json?: boolean;
  readonly start?: Direction;
  readonly anchor?: string;
  readonly arrive?: Direction;
  readonly tune?: string;
  readonly level?: Level;
  readonly preset?: string;
}

/** The output of `explain`. */
interface Explained {
  readonly text: string;
  readonly problems: readonly Problem[];
  /** The folder that the problems' file names are relative to; null for the current one. */
  readonly root: string | null;
}

/**
 * Studies the tunes of a book's folder, of one of its pages, or of an `.abc` file outside a book, and
 * returns the studies as text or JSON. Whole bowings begin with
 * the way that `preset` names. The options `start`, `anchor`, `arrive`, `tune` and `level` apply to `.abc` files,
 * which have no Markdown. Throws `UsageError` for a missing file, a page
 * outside a book, or a wrong option.
 */
export async function explainFile(file: string, options: ExplainOptions): Promise<Explained> {
  if (!existsSync(file)) throw new UsageError(`There is no "${file}".`);
  const abc = extname(file) === '.abc';
  const { asked, problems, root } = abc
    ? explainAbc(file, options)
    : await explainBook(file, options);
  const studies = asked.map(a => a.study);
  const proposals = new Map(asked.map(a => [a.study, proposeForStudy(a)]));
  if (!options.json) return { text: studyText(studies, proposals), problems, root };
  const json = studyJson(studies, problems, proposals);
  return { text: `${JSON.stringify(json, null, 2)}\n`, problems, root };
}

/** A study, and what was asked of its bowing. */
interface Asked {
  readonly study: Study;
  readonly request: Pick<StudyRequest, 'bowing' | 'start'>;
  readonly preset: string | null;
}

function proposeForStudy({ study, request, preset }: Asked): Proposal[] {
  const { tune, performance, fingering, map } = study;
  const context = bowingContext(tune, performance, fingering, map, request.bowing);
  const { start, bowing } = request;
  const { anchors } = study.bowing;
  return proposeBowings(context, { start, anchors, preset, level: bowing.level });
}

interface Explanation {
  readonly asked: readonly Asked[];
  readonly problems: readonly Problem[];
  readonly root: string | null;
}

function explainAbc(file: string, options: ExplainOptions): Explanation {
  const bars = options.anchor === undefined ? null : parseBarRange(options.anchor);
  if (options.anchor !== undefined && bars === null) {
    throw new UsageError(
      `--anchor takes bars such as A5-A6 or A5:2-A6:4, not "${options.anchor}".`,
    );
  }
  const preset = presetAsked(options, defaultBowing);
  const anchors: AnchorRequest[] =
    bars === null
      ? []
      : [
          {
            id: 'anchor',
            bars,
            start: options.arrive ?? null,
            level: options.level ?? null,
            preset,
            asked: [],
            place: null,
          },
        ];
  const { decoded, past } = readAbcFile(file, file);
  // An import goes on with the other files; here there is nothing else to explain.
  if (past) return { asked: [], problems: [{ ...past, severity: 'error' }], root: null };
  const source = { text: decoded.text, file, line: 1, indent: 0 };
  const parsed = parseTunes(source, options.tune === undefined ? {} : { number: options.tune });
  if (options.tune !== undefined && parsed.tunes.length === 0) {
    throw new UsageError(`"${file}" has no tune with X:${options.tune}.`);
  }
  const request: StudyRequest = {
    tuning: fiddleTuning,
    bowing: { ...defaultBowing, level: options.level ?? defaultBowing.level },
    start: options.start ?? null,
    anchors,
    unit: null,
  };
  const asked = parsed.tunes.map(tune => ({ study: studyTune(tune, request), request, preset }));
  const problems = [...parsed.problems, ...asked.flatMap(a => a.study.problems)];
  return { asked, problems, root: null };
}

async function explainBook(file: string, options: ExplainOptions): Promise<Explanation> {
  const folder = statSync(file).isDirectory();
  const root = bookAround(folder ? resolve(file) : dirname(resolve(file)));
  if (root === null) {
    throw new UsageError(`"${file}" is not in a book: no bowbook.yaml in its folder or above.`);
  }
  const { tunes, problems } = await studyBook(root, () => {});
  const name = relative(root, resolve(file)).replaceAll('\\', '/');
  const own = folder ? tunes : tunes.filter(t => t.block.place.file === name);
  return {
    asked: own.flatMap(({ study, request }) =>
      study === null ? [] : [{ study, request, preset: presetAsked(options, request.bowing) }],
    ),
    problems: folder ? problems : problems.filter(p => p.place?.file === name),
    root,
  };
}

/** `--preset`, or null without it. Throws where the settings know none of that name. */
function presetAsked({ preset }: ExplainOptions, { presets }: BowingSettings): string | null {
  if (preset === undefined || Object.hasOwn(presets, preset)) return preset ?? null;
  const known = Object.keys(presets);
  const near = nearest(preset, known);
  const hint = near === null ? `Known: ${known.join(', ')}.` : `Did you mean "${near}"?`;
  throw new UsageError(`There is no preset "${preset}". ${hint}`);
}

/** The nearest folder that holds a `bowbook.yaml`, from `folder` upwards; null for none. */
function bookAround(folder: string): string | null {
  if (existsSync(join(folder, 'bowbook.yaml'))) return folder;
  const above = dirname(folder);
  return above === folder ? null : bookAround(above);
}
