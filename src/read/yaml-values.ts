import * as z from 'zod';
import type { Tuning } from '../../shared/fingering/fingering.ts';
import { parseTuning } from '../../shared/fingering/tunings.ts';
import { parseLabels } from '../../shared/sections/phrase-labels.ts';
import { expects } from '../../shared/words/en/reading.ts';

/** Values that both the book's settings and a page's front matter may have. */

/** Text; a bare number is read as text, since a tune may be called 1845. */
export const words = z
  .union([z.string(), z.number()], { error: expects.words })
  .transform(value => String(value).trim())
  .refine(text => text !== '', { error: expects.words });

/** `true` or `false`. */
export const yesNo = z.boolean({ error: expects.yesNo });

/** A whole number from 1 to `most`. */
export const count = (most: number) =>
  z
    .int({ error: expects.count(most) })
    .min(1, expects.count(most))
    .max(most, expects.count(most));

/** `a b a' c`, or the same as a list. */
export const labels = z
  .union([z.string(), z.array(z.string())], { error: expects.labels })
  .transform((value, context): readonly string[] => {
    const read = parseLabels(typeof value === 'string' ? value : value.join(' '));
    if (read) return read;
    context.addIssue({ code: 'custom', message: expects.labels });
    return z.NEVER;
  });

/** `GDAE`, or `[E5, A4, D4, G3]`. */
export const tuning = z
  .union([z.string(), z.array(z.string())], { error: expects.tuning })
  .transform((value, context): Tuning => {
    const read = readTuning(value);
    if (read) return read;
    context.addIssue({ code: 'custom', message: expects.tuning });
    return z.NEVER;
  });

/** Reads `GDAE`, `E5 A4 D4 G3` or the same as a list; null when it is no tuning. */
export function readTuning(value: string | readonly string[]): Tuning | null {
  if (typeof value !== 'string') return parseTuning(value);
  const names = value.trim().split(/[\s,]+/);
  return parseTuning(names.length === 4 && names.every(name => /\d$/.test(name)) ? names : value);
}
