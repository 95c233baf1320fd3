import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { formatProblems } from '../../src/report/format-problems.ts';

const root = join(import.meta.dirname, '../books/drills-impossible');

test('a drill that its tune cannot give is a warning that says why, and what the tune does give', async () => {
  const { problems } = await studyBook(root, () => {});
  const said = formatProblems(problems, file => {
    const path = join(root, file);
    return existsSync(path) ? readFileSync(path, 'utf8') : null;
  });
  expect(said).toBe(readFileSync(join(root, 'expected-study.txt'), 'utf8'));
});
