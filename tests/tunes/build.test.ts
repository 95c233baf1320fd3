/** @module-tag slow */
import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect } from 'vitest';
import { buildSite } from '../../src/incremental/open-builds.ts';
import { type NamedTune, onTunes } from './on-tunes.ts';

let work: string;
beforeEach(() => {
  work = mkdtempSync(join(tmpdir(), 'bowbook-tunes-'));
});
afterEach(() => rmSync(work, { recursive: true, force: true }));

/** A book of the tunes, a page each. Their rights are not known, so it is built privately. */
function writeBook(tunes: readonly NamedTune[]): void {
  mkdirSync(join(work, 'tunes'));
  writeFileSync(join(work, 'bowbook.yaml'), 'title: Tunes\n');
  for (const [i, { abc }] of tunes.entries()) {
    const text = `:::tune{#tune-${i}}\n\`\`\`abc\n${abc.trim()}\n\`\`\`\n:::\n`;
    writeFileSync(join(work, 'tunes', `tune-${i}.md`), text);
  }
}

describe('a book of many tunes', () => {
  onTunes('has a page for each, drawn or with a placed message', 4, async tunes => {
    writeBook(tunes);
    const out = join(work, 'site');
    const result = await buildSite({ root: work, out, isPrivate: true, progress: () => {} });
    expect(result.problems.filter(p => p.severity === 'error')).toEqual([]);
    expect(result.tunes.length).toBe(tunes.length);
    const pages = readdirSync(join(out, 'tunes')).filter(p => /^(?!index).*\.html$/.test(p));
    expect(pages.length).toBe(tunes.length);
    const silent = result.tunes.filter(t => !t.isStudied && t.problems.length < 2);
    expect(silent.map(t => t.card.id)).toEqual([]);
  });
});
