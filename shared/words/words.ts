import type { Problem } from '../problem.ts';
import { abcMessages } from './en/abc.ts';
import { bowingMessages } from './en/bowing.ts';
import { buildingMessages } from './en/building.ts';
import { clipMessages } from './en/clips.ts';
import { drillMessages } from './en/drills.ts';
import { exportingMessages } from './en/exporting.ts';
import { importingMessages } from './en/importing.ts';
import { limitMessages } from './en/limits.ts';
import { mapMessages } from './en/map.ts';
import { printMessages } from './en/print.ts';
import { readingMessages } from './en/reading.ts';
import type { Messages, ProblemWords } from './problem-words.ts';

const messages: Messages = {
  ...readingMessages,
  ...abcMessages,
  ...bowingMessages,
  ...buildingMessages,
  ...mapMessages,
  ...clipMessages,
  ...printMessages,
  ...drillMessages,
  ...importingMessages,
  ...exportingMessages,
  ...limitMessages,
};

/** The sentences of a problem. */
export const wordProblem = (p: Problem): ProblemWords =>
  (messages[p.rule] as (p: Problem) => ProblemWords)(p);
