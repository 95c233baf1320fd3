import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { buildSite } from '../../src/incremental/open-builds.ts';

/** Children in recordings: written consent, and a refusal by parent or child is a no (common practice). */
const folder = mkdtempSync(join(tmpdir(), 'bowbook-consent-'));
const root = join(folder, 'book');

afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function built(name: string, attributes: string, isPrivate = false) {
  const files: Readonly<Record<string, string>> = {
    'bowbook.yaml': 'title: Consent\nrights: own\npdf: none\n',
    'media/by-the-crane.wav': 'RIFF of a learner',
    'lessons/2026-11-03-first.md': `# First

\`\`\`abc
X:1
T:Salt Marsh
R:reel
M:4/4
L:1/8
K:D
|:DFAd BAFA|GEFD E2 FG:|
\`\`\`

::clip[By the crane]{src=media/by-the-crane.wav ${attributes}}
`,
  };
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  const out = join(folder, name);
  const { problems } = await buildSite({ root, out, isPrivate, progress: () => {} });
  const text = readdirSync(out, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile())
    .map(entry => readFileSync(join(entry.parentPath, entry.name), 'latin1'))
    .join('\n');
  return {
    text,
    rules: problems.map(p => p.rule),
    hasMedia: existsSync(join(out, 'media/by-the-crane.wav')),
  };
}

describe('a recording in which a learner is heard', () => {
  it('is nowhere on the site before consent is given, and the build says so', async () => {
    const { text, rules, hasMedia } = await built('without', 'learner');
    expect(rules).toEqual(['clip-consent']);
    expect(hasMedia).toBe(false);
    expect(text).not.toContain('by-the-crane');
    expect(text).not.toContain('By the crane');
  });

  it('is published with it, and who consented is not', async () => {
    const consent = 'herself and her mother, 2 Nov 2026';
    const { text, rules, hasMedia } = await built('with', `learner consent="${consent}"`);
    expect(rules).toEqual([]);
    expect(hasMedia).toBe(true);
    expect(text).toContain('By the crane');
    expect(text).not.toContain('her mother');
  });

  it('can be heard by the teacher in a private copy', async () => {
    const { text, hasMedia } = await built('private', 'learner', true);
    expect(hasMedia).toBe(true);
    expect(text).toContain('By the crane');
  });
});
