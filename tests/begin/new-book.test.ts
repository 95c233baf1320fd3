import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { fillTemplate } from '../../src/begin/fill-template.ts';
import { type BookAnswers, newBook } from '../../src/begin/new-book.ts';
import { buildSite } from '../../src/incremental/open-builds.ts';
import { writeNew } from '../../src/output/write-new.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { readTune } from '../engrave/compose-study.ts';
import { realTunes, realTunesMissing } from '../tunes/real-tunes.ts';

const templates = join(import.meta.dirname, '../../templates/begin');
const work = mkdtempSync(join(tmpdir(), 'bowbook-begin-'));
afterAll(() => rmSync(work, { recursive: true, force: true }));

const plain: BookAnswers = { title: 'Class', teacher: null, town: null, date: '2026-09-15' };
const odd: BookAnswers = {
  title: 'Bows: "up" & #down # {{yaml}}',
  teacher: 'Wenna *Harkle* \\ [x](y)',
  town: 'Tarrowhythe :::private',
  date: '2026-02-28',
};

describe('a new book', () => {
  it.each([
    ['with the least said', plain],
    ['with odd names', odd],
  ])('%s has nothing wrong with it', async (name, answers) => {
    const root = join(work, name);
    writeNew(root, newBook(templates, answers));
    const { book, tunes, problems } = await studyBook(root, () => {});
    expect(problems).toEqual([]);
    expect(book.settings).toMatchObject({ title: answers.title, teacher: answers.teacher });
    expect(book.lessons.map(l => l.date)).toEqual([answers.date]);
    const [study] = tunes.map(t => t.study);
    expect(tunes.map(t => t.rights)).toMatchObject([{ kind: 'permission' }]);
    expect(study?.bowing.anchors.flatMap(a => a.arrivals.map(r => r.agrees))).toEqual([true, true]);
    expect(study?.bowing.varying).toEqual([]);
  });

  it('builds at once', async () => {
    const root = join(work, 'built');
    writeNew(root, newBook(templates, plain));
    const out = join(root, 'site');
    const { failed, problems } = await buildSite({
      root,
      out,
      isPrivate: false,
      progress: () => {},
    });
    expect([failed, problems.filter(p => p.severity !== 'note')]).toEqual([false, []]);
    expect(readFileSync(join(out, 'tunes/chalk-on-the-slipway.html'), 'utf8')).toContain('<svg');
    expect(readFileSync(join(out, 'index.html'), 'utf8')).not.toContain('A note to yourself');
  }, 60_000);

  it('keeps its word: without a slur of the first four bars, or with three notes in it, the bow comes the wrong way', async () => {
    const files = newBook(templates, plain);
    const tune = files.find(f => f.path.startsWith('tunes/'))?.content ?? '';
    const end = tune.indexOf('d2 c');
    const opened = [...tune.matchAll(/\(([A-Ga-g]{2})\)([A-Ga-g])/g)].filter(m => m.index < end);
    expect(opened.length).toBe(4);
    const changed = opened.flatMap(slur =>
      [`${slur[1]}${slur[2]}`, `(${slur[1]}${slur[2]})`].map(notes => ({ slur, notes })),
    );
    for (const { slur, notes } of changed) {
      const root = mkdtempSync(join(work, 'slur-'));
      const at = slur.index;
      const other = tune.slice(0, at) + notes + tune.slice(at + slur[0].length);
      writeNew(
        root,
        files.map(f => (f.content === tune ? { ...f, content: other } : f)),
      );
      const { problems } = await studyBook(root, () => {});
      expect([slur.index, problems.map(p => p.rule)]).toEqual([
        at,
        expect.arrayContaining(['arrival-missed']),
      ]);
    }
  });

  it('never writes over a file', () => {
    const root = mkdtempSync(join(work, 'taken-'));
    writeFileSync(join(root, 'bowbook.yaml'), 'mine');
    expect(() => writeNew(root, newBook(templates, plain))).toThrow('EEXIST');
    expect(readFileSync(join(root, 'bowbook.yaml'), 'utf8')).toBe('mine');
  });

  /** Steps from note to note: what a tune is known by in any key. */
  const steps = (abc: string): readonly number[] => {
    const notes = readTune(abc).events.flatMap(e =>
      e.kind === 'note' ? [e.pitches.at(-1)?.midi ?? 0] : [],
    );
    return notes.slice(1).map((n, i) => n - (notes[i] ?? 0));
  };

  it('has a tune that is like none of the real tunes', { timeout: 120_000 }, context => {
    context.skip(realTunesMissing !== null, realTunesMissing ?? '');
    const tune = newBook(templates, plain).find(f => f.path.startsWith('tunes/'))?.content ?? '';
    const own = steps(/```abc\n([\s\S]*?)```/.exec(tune)?.[1] ?? '');
    expect(own.length).toBeGreaterThan(70);
    // No run of ten notes in a row, in any key, stands in a real tune.
    const runs = own.flatMap((_, i) =>
      i + 9 <= own.length ? [`,${own.slice(i, i + 9).join()},`] : [],
    );
    const known = realTunes().flatMap(text => {
      try {
        return [`,${steps(text).join()},`];
      } catch {
        return []; // it cannot be read
      }
    });
    expect(known.length).toBeGreaterThan(900);
    expect(runs.filter(run => known.some(tune => tune.includes(run)))).toEqual([]);
  });
});

describe('filling a template', () => {
  const answers = { title: 'A "b"', teacher: null };

  it('puts in what was said, as YAML or as words, and leaves out what was not', () => {
    expect(
      fillTemplate(
        'title: {{yaml title}}\nteacher: {{yaml teacher}}\n{{without teacher}}# none\n{{without title}}x\n{{title}}!',
        answers,
      ),
    ).toBe('title: "A \\"b\\""\n# none\nA "b"!');
  });

  it('throws where a template asks for what nobody knows', () => {
    expect(() => fillTemplate('{{tilte}}', answers)).toThrow('tilte');
  });
});
