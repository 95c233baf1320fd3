import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { buildSite } from '../../src/incremental/open-builds.ts';

const work = mkdtempSync(join(tmpdir(), 'bowbook-renamed-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

const abc = '```abc\nX:1\nT:Salt Marsh\nM:4/4\nL:1/8\nK:D\n|:DFAd B2 AF|GEFD E2 CE:|\n```\n';

test.each([
  ['draft: true', '', 'draft', 'unfinished'],
  [
    'rights: own',
    ':::anchor{#end bars=A2 start=down hooks=no}\nWhy.\n:::\n',
    'hooks',
    'stands-out',
  ],
])(
  'an old word stops the build, and the message names the new one: %s',
  async (head, more, old, now) => {
    const root = mkdtempSync(join(work, 'book-'));
    mkdirSync(join(root, 'lessons'));
    writeFileSync(join(root, 'bowbook.yaml'), 'title: Old words\npdf: none\n');
    writeFileSync(
      join(root, 'lessons/2026-09-15-first.md'),
      `---\n${head}\n---\n# First\n\n${abc}\n${more}`,
    );
    const out = join(root, 'site');
    const { failed, problems } = await buildSite({
      root,
      out,
      isPrivate: false,
      progress: () => {},
    });
    expect(failed).toBe(true);
    expect(problems).toMatchObject([{ severity: 'error', actual: old, nearest: now }]);
    expect(existsSync(out)).toBe(false);
  },
);
