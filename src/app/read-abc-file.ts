import { readFileSync, statSync } from 'node:fs';
import { limits } from '../../shared/limits.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { type DecodedText, decodeText } from '../import/decode-text.ts';

/** A file of ABC as text, or the problem `abc-past-limit` where it is too large to be read. */
export type ReadAbcFile =
  | { readonly decoded: DecodedText; readonly past: null }
  | { readonly decoded: null; readonly past: Problem };

/**
 * Reads a file of ABC in any encoding (`decodeText`). `file` is its name in messages. Does not open a
 * file larger than `limits.abcSize`. Throws where there is no such file.
 */
export function readAbcFile(path: string, file: string): ReadAbcFile {
  const { size } = statSync(path);
  if (size > limits.abcSize) {
    const facts = { found: size, most: limits.abcSize };
    return {
      decoded: null,
      past: problem('abc-past-limit', null, { actual: file, facts }),
    };
  }
  return { decoded: decodeText(readFileSync(path)), past: null };
}
