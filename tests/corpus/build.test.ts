import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { buildSite } from '../../src/incremental/open-builds.ts';
import { corpusFiles, corpusMissing } from './corpus.ts';

const work = mkdtempSync(join(tmpdir(), 'bowbook-corpus-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

/** A book of the real tunes, a page each. Their rights are not known, so it is built privately. */
function writeBook(): number {
  mkdirSync(join(work, 'tunes'));
  writeFileSync(join(work, 'bowbook.yaml'), 'title: Real tunes\n');
  let count = 0;
  for (const file of corpusFiles()) {
    for (const abc of file.text.split(/^(?=X:)/m).filter(t => t.startsWith('X:'))) {
      count++;
      const id = `${file.name.replace('.abc', '')}-${count}`;
      const text = `:::tune{#${id}}\n\`\`\`abc\n${abc.trim()}\n\`\`\`\n:::\n`;
      writeFileSync(join(work, 'tunes', `${id}.md`), text);
    }
  }
  return count;
}

describe.skipIf(corpusMissing !== null)('a book of a thousand real tunes', () => {
  it('builds: a page for each tune, drawn or with a placed message', async () => {
    const count = writeBook();
    const out = join(work, 'site');
    const result = await buildSite({ root: work, out, isPrivate: true, progress: () => {} });
    const errors = result.problems.filter(p => p.severity === 'error');
    expect(errors).toEqual([]);
    expect(result.tunes.length).toBe(count);
    const pages = readdirSync(join(out, 'tunes')).filter(p => /^(?!index).*\.html$/.test(p));
    expect(pages.length).toBe(count);
    const silent = result.tunes.filter(t => !t.isStudied && t.problems.length < 2);
    expect(silent.map(t => t.card.id)).toEqual([]);
    const studied = result.tunes.filter(t => t.isStudied).length;
    console.log(`${count} tunes built: ${studied} studied, ${count - studied} with a message only`);
  }, 600_000);
});
