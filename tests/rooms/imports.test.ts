import { describe, expect, it } from 'vitest';
import { circleIn, filesIn, type ImportLine, importLines, textOf } from './import-lines.ts';

/** Who may import whom: the rule of `docs/architecture.md`, read off the import lines. */
const room = (path: string): string => path.split('/').slice(0, 2).join('/');
const shown = (lines: readonly ImportLine[]) => lines.map(l => `${l.from} -> ${l.to}`);

describe('the rooms', () => {
  const shared = importLines('shared');
  const src = importLines('src');

  it('are not empty', () => {
    expect(shared.length).toBeGreaterThan(20);
    expect(src.length).toBeGreaterThan(20);
  });

  it('shared/ imports nothing but itself', () => {
    expect(shown(shared.filter(l => !l.to.startsWith('shared/')))).toEqual([]);
  });

  it('import nothing in a circle, inside a room neither', () => {
    const lines = (...pairs: string[]) =>
      pairs.map(pair => ({ from: pair.charAt(0), to: pair.charAt(1), typeOnly: false }));
    expect(circleIn(lines('ab', 'bc', 'ac', 'cd'))).toBeNull();
    expect(circleIn(lines('ab', 'bc', 'cb'))).toEqual(['b', 'c', 'b']);
    // Types are gone when the program runs, so two files may describe their data by each other's.
    expect(circleIn([...shared, ...src].filter(l => !l.typeOnly))).toBeNull();
  });

  it('inside shared/ nothing looks upward', () => {
    const ladder = ['music', 'fingering', 'sections', 'bowing', 'drills'].map(r => `shared/${r}`);
    const rung = (path: string): number => {
      const at = ladder.indexOf(room(path));
      if (at >= 0) return at;
      const below = ['rules', 'problem', 'nearest', 'limits', 'must'].map(
        name => `shared/${name}.ts`,
      );
      return below.includes(path) ? -1 : ladder.length;
    };
    expect(shown(shared.filter(l => rung(l.to) > rung(l.from)))).toEqual([]);
  });

  it('the sound of a tune is made from music, map and bowing alone', () => {
    const from = ['music', 'sections', 'bowing', 'sound', 'must.ts'].map(r => `shared/${r}`);
    const sound = shared.filter(l => room(l.from) === 'shared/sound');
    expect(sound.length).toBeGreaterThan(10);
    expect(shown(sound.filter(l => !from.includes(room(l.to))))).toEqual([]);
  });

  it('the planning of reviews knows nothing of tunes, and clips and sets nothing of words', () => {
    const from = (name: string) => shared.filter(l => room(l.from) === `shared/${name}`);
    const own = ['shared/review', 'shared/must.ts'];
    expect(shown(from('review').filter(l => !own.includes(room(l.to))))).toEqual([]);
    const above = /^shared\/(?:words|notation|sound|drills|review)\b/;
    expect(shown([...from('clips'), ...from('sets')].filter(l => above.test(l.to)))).toEqual([]);
    expect(from('sets').length).toBeGreaterThan(0);
    expect(from('clips').length).toBeGreaterThan(0);
  });

  it('what readers see takes its words from the language of the book', () => {
    const inLanguage = /^shared\/words\/(?!en\/)[a-z]{2,3}\//;
    const named = /^shared\/words\/[a-z]{2,3}\//;
    const values = [...shared, ...src].filter(l => !l.typeOnly && named.test(l.to));
    const views = values.filter(l => /^src\/(?:pages|print)\//.test(l.from));
    expect(shown(views)).toEqual([]);
    // The bundle of a language puts its folder in place of `en`; no language leans on another.
    const scripts = values.filter(l => l.from.startsWith('src/browser/') && inLanguage.test(l.to));
    expect(shown(scripts)).toEqual([]);
    const across = values.filter(
      l => inLanguage.test(l.from) && l.to.startsWith('shared/words/en/'),
    );
    expect(shown(across)).toEqual([]);
    expect(values.filter(l => l.from.startsWith('src/browser/')).length).toBeGreaterThan(10);
  });

  it('the logic of what is said finds no word of its own, and a language has no logic of another', () => {
    const room = shared.filter(l => !l.typeOnly && l.from.startsWith('shared/words/'));
    const inFolder = /^shared\/words\/[a-z]{2,3}\//;
    const gather = ['shared/words/words-for.ts', 'shared/words/words.ts'];
    const logic = room.filter(l => !inFolder.test(l.from) && !gather.includes(l.from));
    expect(logic.length).toBeGreaterThan(40);
    expect(shown(logic.filter(l => inFolder.test(l.to)))).toEqual([]);
    const tables = room.filter(l => inFolder.test(l.from) && l.to.startsWith('shared/words/'));
    const steps = tables.filter(l => !inFolder.test(l.to) && l.to !== 'shared/words/text.ts');
    expect(shown(steps.filter(l => l.to !== 'shared/words/note-places.ts'))).toEqual([]);
    expect(tables.length).toBeGreaterThan(20);
  });

  it('a stage takes only types from other stages', () => {
    const names = 'read abc engrave pages print export browser import begin output'.split(' ');
    const stages = names.map(r => `src/${r}`);
    const wrong = src.filter(
      l =>
        stages.includes(room(l.from)) &&
        l.to.startsWith('src/') &&
        room(l.to) !== room(l.from) &&
        room(l.to) !== 'src/report' &&
        !l.typeOnly,
    );
    expect(shown(wrong)).toEqual([]);
  });

  it('the pages, print and export do not know each other', () => {
    const three = ['src/pages', 'src/print', 'src/export'];
    const wrong = src.filter(
      l =>
        three.includes(room(l.from)) && three.includes(room(l.to)) && room(l.from) !== room(l.to),
    );
    expect(shown(wrong)).toEqual([]);
  });

  it('the pages’ scripts import shared/ only, and the library that finds words', () => {
    const wrong = src.filter(
      l =>
        room(l.from) === 'src/browser' &&
        !l.to.startsWith('shared/') &&
        !(l.to === 'minisearch' && l.from.startsWith('src/browser/search/')) &&
        room(l.to) !== 'src/browser',
    );
    expect(shown(wrong)).toEqual([]);
  });

  it.each([
    ['src/read', /^(unified|remark-|rehype-|mdast-|hast-|unist-|yaml$|zod$)/],
    ['src/pages', /^handlebars/],
    ['src/export', /^(midi-file|fflate)$/],
    ['src/print', /^@myriaddreamin\//],
    ['src/engrave', /^abcjs\/src/],
    ['src/preview', /^(chokidar|sirv)$/],
  ])('%s is the one doorway to its libraries', (doorway, packages) => {
    const wrong = src.filter(l => packages.test(l.to) && room(l.from) !== doorway && !l.typeOnly);
    expect(shown(wrong)).toEqual([]);
    expect(src.some(l => packages.test(l.to) && room(l.from) === doorway)).toBe(true);
  });

  it('only the command reads its arguments and folder, prints, and ends the process', () => {
    const wrong = filesIn('src').filter(file => {
      const code = textOf(file).replace(/\/\*[\s\S]*?\*\/|\/\/.*/g, '');
      const may =
        file === 'src/commands/cli.ts' ||
        ['src/commands', 'src/preview', 'src/start'].includes(room(file));
      return !may && /\bprocess\.(?:argv|cwd|env|exit|on\b|once|std)/.test(code);
    });
    expect(wrong).toEqual([]);
  });

  it('what computes knows nothing of what remembers, nor either of what asks for it', () => {
    const floors = [
      ['pipeline'],
      ['incremental', 'workers'],
      ['app'],
      ['commands', 'preview', 'bundling', 'start'],
    ].map(names => names.map(name => `src/${name}`));
    const floorOf = (path: string): number => floors.findIndex(rooms => rooms.includes(room(path)));
    expect(src.some(l => floorOf(l.from) > floorOf(l.to) && floorOf(l.to) === 0)).toBe(true);
    expect(shown(src.filter(l => floorOf(l.to) > floorOf(l.from)))).toEqual([]);
  });

  it('the preview stands on the build, and takes only types from its stages', () => {
    const from = src.filter(l => room(l.from) === 'src/preview' && l.to.startsWith('src/'));
    const may =
      /^src\/(?:preview\/|report\/|incremental\/open-builds\.ts$|app\/|pages\/package-root\.ts$)/;
    expect(from.length).toBeGreaterThan(5);
    expect(shown(from.filter(l => !may.test(l.to) && !l.typeOnly))).toEqual([]);
  });

  it('nothing but the command imports the commands', () => {
    const wrong = src.filter(
      l =>
        room(l.to) === 'src/commands' &&
        room(l.from) !== 'src/commands' &&
        l.from !== 'src/bundling/bundled.ts',
    );
    expect(shown(wrong)).toEqual([]);
  });

  it('abcjs is reached through src/abc and src/engrave', () => {
    const wrong = src.filter(
      l => l.to.startsWith('abcjs') && !['src/abc', 'src/engrave'].includes(room(l.from)),
    );
    expect(shown(wrong)).toEqual([]);
  });
});
