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

/** A problem in words: what was found and expected, and how to mend it. */
export interface ProblemWords {
  readonly message: string;
  readonly mend: string;
}

const messages: Readonly<Record<string, (p: Problem) => ProblemWords>> = {
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

/** The sentences of a problem. Throws on a rule without words: that is a defect of ours. */
export function wordProblem(p: Problem): ProblemWords {
  const words = Object.hasOwn(messages, p.rule) ? messages[p.rule] : undefined;
  if (!words) throw new Error(`no words for the rule ${p.rule}`);
  return words(p);
}

/** Every rule that has words; `docs/rules/` has a page for each. */
export const wordedRules: readonly string[] = Object.keys(messages);
