import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { limits } from '../../shared/limits.ts';
import { type Problem, problem } from '../../shared/problem.ts';
import { type Rule, ruleNames, rules } from '../../shared/rules.ts';
import { wordProblem } from '../../shared/words/words.ts';
import { rulePage } from '../../src/report/rule-page.ts';
import { readRulePage } from './rule-page.ts';
import { tryExample } from './try-example.ts';

/** The pages of `docs/rules`, held to what the program says of their examples. */
const root = join(import.meta.dirname, '../..');
const folder = join(root, 'docs/rules');

const names = readdirSync(folder)
  .filter(name => name !== 'README.md')
  .map(name => name.replace(/\.md$/, '') as Rule);

/** What is found where a rule with no example is broken, so that its page can quote the message. */
const found: Readonly<Record<string, Partial<Problem>>> = {
  'unfinished-needed': { facts: { rule: 'tune-unknown' } },
  'site-unwritable': { actual: 'site', facts: { reason: 'ENOSPC' } },
  'source-gone': { actual: 'media/quay.mp3', facts: { reason: 'ENOENT' } },
  'drawing-failed': { actual: 'no room for the clef', facts: { tune: 'Kelp Cutters' } },
  'print-long': { facts: { tune: 'The Long Causeway' } },
  'tunes-past-limit': { facts: { found: 5012, most: limits.tunes } },
  'page-past-limit': { facts: { found: 240212, most: limits.pageLength } },
  'lines-past-limit': { facts: { found: 12400, most: limits.pageLines } },
  'line-past-limit': { facts: { found: 48213, most: limits.lineLength } },
  'table-past-limit': { facts: { found: 26000, most: limits.tableCells } },
  'link-past-limit': { facts: { found: 3120, most: limits.linkLength } },
  'media-past-limit': {
    actual: 'media/session.wav',
    facts: { what: 'recording', found: 310000000, most: limits.recordingSize },
  },
  'files-past-limit': { actual: 'media', facts: { found: 24000, most: limits.files } },
  'abc-past-limit': { actual: 'all-tunes.abc', facts: { found: 31000000, most: limits.abcSize } },
  'outside-the-book': { actual: 'media/quay.mp3', facts: {} },
};

const textOf = (rule: Rule): string => readFileSync(join(root, rulePage(rule)), 'utf8');

/** Whether anything but the rule's own problem is said, that the page does not name. */
const unnamed = (problems: readonly Problem[], text: string): readonly string[] =>
  problems.map(p => p.rule).filter(rule => !text.includes(`\`${rule}\``));

it('every rule has a page, and every page a rule', () => {
  expect([...names].sort()).toEqual([...ruleNames].sort());
});

it('the contents name every page with its title', () => {
  const contents = readFileSync(join(folder, 'README.md'), 'utf8');
  const listed = contents.match(/^- \[.+$/gm) ?? [];
  const pages = names.map(
    rule => `- [\`${rule}\`](${rule}.md): ${readRulePage(textOf(rule)).title}`,
  );
  expect([...listed].sort()).toEqual([...pages].sort());
});

it('no two pages share a sentence of their prose', () => {
  const sentences = names.flatMap(rule => {
    const prose = textOf(rule)
      .replace(/^(`{3,})\w[\s\S]*?^\1$/gm, '')
      .split(/\n\n+/)
      .filter(block => !/^(#|>|`|Tested by)/.test(block) && block.trim() !== '');
    return prose.flatMap(block => block.replace(/\s+/g, ' ').split(/(?<=[.:]) (?=[A-Z])/));
  });
  const long = sentences.filter(s => s.length > 40);
  expect(long.length).toBeGreaterThan(300);
  expect(long.filter((s, i) => long.indexOf(s) !== i)).toEqual([]);
});

describe.each(names)('%s', rule => {
  const text = textOf(rule);
  const page = readRulePage(text);
  const wrong = page.files.filter(f => f.book === 'wrong');

  it('has its name, its weight, what is said, and its headings', () => {
    expect(page.rule).toBe(rule);
    expect(page.severity).toBe(rules[rule].severity);
    expect(page.message).not.toBe('');
    const examples = page.testedBy === null ? ['Wrong', 'Right'] : [];
    const both = page.files.some(f => f.book === 'both') ? ['In both'] : [];
    expect(page.headings).toEqual([...both, ...examples, 'How to mend it']);
  });

  if (page.testedBy !== null) {
    const other = page.testedBy;
    it('is tested where the page says, and quoted in its words', () => {
      expect(page.files).toEqual([]);
      const said = wordProblem({
        ...problem('fence-stray', null),
        rule,
        ...found[rule],
      } as Problem);
      expect(page.message).toBe(said.message);
      expect(existsSync(join(root, other))).toBe(true);
      expect(readFileSync(join(root, other), 'utf8')).toContain(`'${rule}'`);
    });
    return;
  }

  it('is given by the wrong example, in the words and at the line of the page', async () => {
    const problems = await tryExample(rule, page.files, 'wrong');
    const said = problems.filter(p => p.rule === rule);
    const [first] = said;
    expect(first && wordProblem(first).message, problems.map(p => p.rule).join()).toBe(
      page.message,
    );
    expect(first?.severity).toBe(page.severity);
    // A file that is missing is named too, and has no line to mark.
    const shown = page.files.some(f => f.path === first?.place?.file && f.book !== 'right');
    const marked = page.files.filter(f => f.line !== null).map(f => [f.path, f.line]);
    expect(marked).toEqual(shown ? [[first?.place?.file, first?.place?.line]] : []);
    expect(wrong.length).toBeGreaterThan(0);
    expect(unnamed(problems, text)).toEqual([]);
  });

  it('is not given by the right one, nor is anything else', async () => {
    const problems = await tryExample(rule, page.files, 'right');
    expect(problems.map(p => [p.rule, wordProblem(p).message])).toEqual([]);
  });
});
