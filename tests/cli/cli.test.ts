import { spawn, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = join(import.meta.dirname, '../..');
const work = mkdtempSync(join(tmpdir(), 'bowbook-cli-'));
const cli = join(root, 'dist/cli.js');

interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

function run(...args: string[]): Ran {
  const ran = spawnSync(process.execPath, [cli, ...args], { cwd: work, encoding: 'utf8' });
  return { code: ran.status, out: ran.stdout, err: ran.stderr };
}

beforeAll(() => {
  cpSync(join(root, 'content'), join(work, 'content'), { recursive: true });
});

afterAll(() => rmSync(work, { recursive: true, force: true }));

describe('the command', () => {
  it('builds a book and says where to open it', { tags: ['slow'] }, () => {
    const { code, out } = run('build');
    expect(code).toBe(0);
    expect(out).toMatch(/^\d+ pages, \d+ tunes: open site\/index\.html\n$/);
  });

  it('ends quietly when whoever reads what it prints stops reading', {
    tags: ['slow'],
  }, async () => {
    const child = spawn(process.execPath, [cli, 'explain', 'content', '--json'], { cwd: work });
    let err = '';
    child.stderr.on('data', data => {
      err += data;
    });
    child.stdout.once('data', () => child.stdout.destroy());
    const code = await new Promise(resolve => child.on('close', resolve));
    expect(err).not.toContain('EPIPE');
    expect(code).toBe(0);
  });

  it('prints one tune as asked, and names the nearest tune where there is none', () => {
    const { code, out } = run(
      'print',
      '--what',
      'sheets',
      '--tune',
      'wet-rope',
      '--for',
      'children',
    );
    expect(code).toBe(0);
    expect(out).toMatch(/^\d pages?: sheets\.pdf\n$/);
    expect(readFileSync(join(work, 'sheets.pdf'), 'latin1')).toMatch(/^%PDF-1\.7/);
    const unknown = run('print', '--tune', 'wet-roap');
    expect(unknown.code).toBe(2);
    expect(unknown.err).toContain('Did you mean "wet-rope"?');
    expect(run('print', '--step', '6').code).toBe(2);
  });

  it('leaves the last good site when the book has an error, and exits 1', {
    tags: ['slow'],
  }, () => {
    run('build');
    const before = readFileSync(join(work, 'site/index.html'), 'utf8');
    const broken = join(work, 'content/lessons/2026-12-01-broken.md');
    writeFileSync(broken, '---\ntitle: Broken\ndate: 2026-12-01\n---\n\n:::private\nsecret\n');
    const { code, err } = run('build');
    rmSync(broken);
    expect(code).toBe(1);
    expect(err).toContain('lessons/2026-12-01-broken.md\n\n  Line 6, column 1: error');
    expect(readFileSync(join(work, 'site/index.html'), 'utf8')).toBe(before);
  });

  it('keeps files in the site that it did not write', { tags: ['slow'] }, () => {
    run('build');
    writeFileSync(join(work, 'site/CNAME'), 'mine');
    expect(run('build').code).toBe(0);
    expect(readFileSync(join(work, 'site/CNAME'), 'utf8')).toBe('mine');
  });

  it('shows private notes only in a folder of their own', { tags: ['slow'] }, () => {
    run('build');
    expect(run('build', '--private').code).toBe(0);
    expect(readFileSync(join(work, 'site-private/index.html'), 'utf8')).toMatch(/private/i);
    const { code, err } = run('build', '--private', '--out', 'site');
    expect(code).toBe(2);
    expect(err).toContain('Choose another folder');
  });

  it('checks and writes nothing', () => {
    const { code, out } = run('check', 'content', '--help');
    expect(code).toBe(0);
    expect(out).toContain('Usage');
    expect(run('check').code).toBe(0);
  });

  it('exits 2 on wrong use', () => {
    expect(run('bild').code).toBe(2);
    expect(run('build', 'nowhere').code).toBe(2);
    expect(run('explain', 'nowhere.abc').code).toBe(2);
  });

  it('explains a bare tune, the same each time', () => {
    const abc = 'X:1\nT:Bare\nM:4/4\nL:1/8\nK:D\nDEFG ABcd|d4 D4|\n';
    writeFileSync(join(work, 'bare.abc'), abc);
    const args = ['explain', 'bare.abc', '--json', '--anchor', 'A2', '--arrive', 'up'];
    const { code, out } = run(...args);
    expect(code).toBe(0);
    const study = JSON.parse(out);
    expect(study.bowbookStudy).toBe(1);
    const [lead] = study.tunes[0].anchors[0].leadIns;
    // Eight separate notes have seven junctions; 2^7 groupings, half of which arrive.
    expect(lead.groupings).toBe('128');
    expect(lead.arriving).toBe('64');
    expect(study.tunes[0].anchors[0].arrivals).toEqual([
      { pass: 1, direction: 'down', agrees: false },
    ]);
    expect(run(...args).out).toBe(out);
  });

  it('begins a book in a new folder, which has nothing wrong with it, and never in a used one', () => {
    const { code, out, err } = run('begin', 'new-book', '--teacher', 'Wenna Harkle');
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('4 files written to new-book:');
    expect(run('check', 'new-book')).toEqual({ code: 0, out: 'no problems\n', err: '' });
    const settings = readFileSync(join(work, 'new-book/bowbook.yaml'), 'utf8');
    expect(settings).toContain('teacher: "Wenna Harkle"');
    const again = run('begin', 'new-book');
    expect([again.code, again.err]).toEqual([2, expect.stringContaining('is a book already')]);
    const used = run('begin', '.');
    expect([used.code, used.err]).toEqual([2, expect.stringContaining('is not empty')]);
    expect(run('begin', 'other', '--date', 'Tuesday').code).toBe(2);
  });

  it('imports tunes, and the second time none', () => {
    run('begin', 'importing');
    writeFileSync(join(work, 'mine.abc'), 'X:1\nT:Wet Sill\nR:reel\nM:4/4\nK:D\nDEFG ABcd|\n');
    const first = run('import', 'mine.abc', '--book', 'importing');
    expect([first.code, first.err]).toEqual([0, '']);
    expect(first.out).toContain('1 tune in 1 file: 1 written, none there already.');
    expect(first.out).toContain('rights: unknown');
    const second = run('import', 'mine.abc', '--book', 'importing');
    expect([second.code, second.out]).toEqual([
      0,
      '1 tune in 1 file: none written, 1 there already.\n',
    ]);
    writeFileSync(join(work, 'letter.txt'), 'Dear Wenna\n');
    const none = run('import', 'letter.txt', '--book', 'importing');
    expect([none.code, none.err]).toEqual([
      1,
      expect.stringContaining('letter.txt\n\n  Line 1, column 1: warning'),
    ]);
    expect(run('import', 'nowhere.abc', '--book', 'importing').code).toBe(2);
    expect(run('import', 'importing', '--book', 'importing').code).toBe(2);
  });

  it('exports a tune, and holds back one whose rights are not known', () => {
    run('begin', 'exporting');
    writeFileSync(join(work, 'ours.abc'), 'X:1\nT:Wet Sill\nM:4/4\nK:D\nDEFG ABcd|\n');
    run('import', 'ours.abc', '--book', 'exporting');
    const id = 'chalk-on-the-slipway';
    const one = run('export', 'exporting', '--tune', id, '--as', 'midi', '--out', 'chalk.mid');
    expect([one.code, one.out]).toEqual([0, 'Written: chalk.mid\n']);
    expect(readFileSync(join(work, 'chalk.mid')).subarray(0, 4).toString()).toBe('MThd');
    const all = run('export', 'exporting', '--out', 'given');
    expect([all.code, all.out]).toEqual([0, '4 files written to given\n']);
    expect(all.err).toContain('export-withheld');
    const held = run('export', 'exporting', '--tune', 'wet-sill');
    expect([held.code, held.out]).toEqual([1, '']);
    const near = run('export', 'exporting', '--tune', 'wet-sil');
    expect([near.code, near.err]).toEqual([2, expect.stringContaining('Did you mean "wet-sill"?')]);
    expect(run('export', 'exporting', '--as', 'zip', '--tune', id).code).toBe(2);
    expect(run('export', 'exporting', '--out', 'a.mid').code).toBe(2);
  });
});
