import { describe, expect, it } from 'vitest';
import { bookmarks, pageTexts, popplerMissing } from './poppler.ts';
import { files, printOf } from './print-class.ts';

const withDrills = {
  ...files,
  'lessons/2026-03-17-third.md': `---
title: The third evening
date: 2026-03-17
---

::drill{kind=start of=quay-reel seed=2}

::drill{kind=gaps of=lantern seed=5}

:::private
::drill{kind=same of=quay-reel}
:::
`,
};

describe.skipIf(popplerMissing !== null)('the drills of the lessons', () => {
  const { pdf } = printOf(withDrills);
  const pages = pageTexts(pdf);
  const marks = bookmarks(pdf);
  const pageOf = (title: string): number => marks.find(m => m.title === title)?.page ?? 0;

  it('stand behind the tunes, their answers on pages of their own after them', () => {
    expect(pageOf('Drills')).toBeGreaterThan(0);
    expect(pageOf('Answers to the drills')).toBeGreaterThan(pageOf('Drills'));
    const questions = pages
      .slice(pageOf('Drills') - 1, pageOf('Answers to the drills') - 1)
      .join('\n');
    const answers = pages.slice(pageOf('Answers to the drills') - 1).join('\n');
    for (const name of [
      'Drill 1. Start anywhere: The Quay Reel',
      'Drill 2. Notes left out: Lantern',
    ]) {
      expect(questions).toContain(name);
      expect(answers).toContain(name);
    }
    expect(questions).not.toContain('Drill 3');
  });

  it('are named in their lesson, with the page', () => {
    const lesson = pages.find(p => /^\s*The third evening$/m.test(p)) ?? '';
    expect(lesson).toMatch(
      new RegExp(`Drill 1\\. Start anywhere: The Quay Reel, page ${pageOf('Drills')}`),
    );
  });

  it('are the same drills every time', () => {
    expect(printOf(withDrills).pdf.equals(pdf)).toBe(true);
  });
});
