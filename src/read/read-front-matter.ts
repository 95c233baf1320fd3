import type { Root } from 'mdast';
import * as z from 'zod';
import type { Tuning } from '../../shared/fingering/fingering.ts';
import { type Direction, type TuneType, tuneTypes } from '../../shared/music/tune.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import type { LabelRequest } from '../../shared/sections/phrase-labels.ts';
import { expects } from '../../shared/words/en/reading.ts';
import { readYaml } from './read-yaml.ts';
import { type RightsName, rightsNames } from './rights.ts';
import { type ShownBy, shownBy } from './show.ts';
import { placeAt, positionOf, type SourceText } from './source-text.ts';
import { count, labels, tuning, words, yesNo } from './yaml-values.ts';

const frontMatter = z.strictObject(
  {
    title: words.optional(),
    date: words.refine(isDate, { error: expects.date }).optional(),
    summary: words.optional(),
    unfinished: yesNo.optional(),
    rights: z.enum(rightsNames).optional(),
    permission: words.optional(),
    'learned-from': words.optional(),
    version: words.optional(),
    type: z.enum(tuneTypes).optional(),
    start: z.enum(['down', 'up']).optional(),
    restart: z.enum(['part']).optional(),
    tuning: tuning.optional(),
    unit: count(16).optional(),
    labels: labels.optional(),
    show: z.enum(shownBy).optional(),
  },
  { error: expects.table },
);

/** Front matter of a page, the YAML between `---` at its head; a key that is missing is undefined. */
export interface FrontMatter extends TuneFacts {
  readonly title?: string | undefined;
  readonly date?: string | undefined;
  readonly summary?: string | undefined;
  readonly unfinished?: boolean | undefined;
}

/** Facts about a tune, from the front matter of its page or the attributes of its `:::tune`. */
export interface TuneFacts {
  readonly rights?: RightsName | undefined;
  readonly permission?: string | undefined;
  readonly 'learned-from'?: string | undefined;
  readonly version?: string | undefined;
  readonly type?: TuneType | undefined;
  readonly start?: Direction | undefined;
  readonly restart?: 'part' | undefined;
  readonly tuning?: Tuning | undefined;
  readonly unit?: number | undefined;
  readonly labels?: LabelRequest | undefined;
  readonly show?: ShownBy | undefined;
}

/** The front matter of a page; fields that are missing or wrong have their default. */
export interface FrontMatterReading {
  readonly front: FrontMatter;
  /** The line after the front matter, from 1. */
  readonly bodyLine: number;
  readonly problems: readonly Problem[];
}

/** Reads the front matter of a page. An unclosed one is a problem; a page may have none. */
export function readFrontMatter({ file, text }: SourceText, tree: Root): FrontMatterReading {
  const head = tree.children[0];
  const opens = /^---[ \t]*(?:\n|$)/.test(text);
  if (head?.type !== 'yaml') {
    const unclosed = opens ? [problem('front-matter-unclosed', placeAt(file, 1, 1))] : [];
    return { front: {}, bodyLine: 1, problems: unclosed };
  }
  const { value, problems, placeOf } = readYaml(
    { file, text: head.value, firstLine: 2 },
    frontMatter,
  );
  const bodyLine = positionOf(head).end.line + 1;
  const front: FrontMatter = {
    ...value,
    labels: value?.labels && { labels: value.labels, place: placeOf(['labels']) },
  };
  if (value?.rights !== undefined && value.permission !== undefined) {
    const twice = problem('rights-twice', placeOf(['permission']));
    return { front, bodyLine, problems: [twice] };
  }
  return { front, bodyLine, problems };
}

/** A day of the calendar, as `2026-09-15`. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}
