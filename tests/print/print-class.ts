import { wordsFor } from '../../shared/words/words-for.ts';
import { engraveTune } from '../../src/engrave/engrave-tune.ts';
import { packageRoot } from '../../src/pages/package-root.ts';
import { drawTune } from '../../src/pipeline/draw-tune.ts';
import { noteChain } from '../../src/pipeline/note-chain.ts';
import { studyJob } from '../../src/pipeline/study-job.ts';
import { tuneJobs } from '../../src/pipeline/tune-job.ts';
import { type Printed, printBook } from '../../src/print/print-book.ts';
import type { PrintOptions } from '../../src/print/print-input.ts';
import { bookOf } from '../../src/read/book-of.ts';

/** A small class of our own, with what a print must get right. */
export const files: Readonly<Record<string, string>> = {
  'bowbook.yaml': 'title: The Quay “Fiddle” Book\nteacher: Ansa Loom\nlanguage: en-GB\n',
  'lessons/2026-03-03-first.md': `---
title: The first evening
date: 2026-03-03
---

Start :stroke[down], not :stroke[up]. See [the reel](../tunes/quay-reel.md).

| bar | strokes |
|---|---|
| A1 | six |

:::tune{#lantern type=reel rights=traditional}
Heard through a window, in C♯ or B♭ or ♮.

\`\`\`abc
X:1
T:Lantern in the Rain
T:The Žluť Candle
M:4/4
L:1/8
K:G
|:GBdB cAFA|GBdB A2FA|GBdB cAFA|DFAF G4:|
\`\`\`
:::

:::private
The heron does not know the tune.
:::
`,
  'lessons/2026-03-10-second.md': `---
title: The second evening
date: 2026-03-10
---

:::anchor{#turn of=quay-reel bars="A4" start=up}
The whole class lands here.
:::

::plan{to=turn}
`,
  'tunes/quay-reel.md': `---
title: The Quay Reel
---

:::tune{#quay-reel type=reel rights=own}
\`\`\`abc
X:1
T:The Quay Reel
C:Ansa Loom, 2024
M:4/4
L:1/8
K:D
|:DFAF d2AF|GBAG FDEF|DFAF dABc|dAFE D4:|
|:fafd efge|fafd e2 (de)|fafd efge|dAFE D4:|
\`\`\`
:::
`,
  'tunes/unknown.md': `---
title: Nobody's Air
---

:::tune{#nobodys-air type=air}
\`\`\`abc
X:1
T:Nobody's Air
M:3/4
L:1/4
K:G
GBd|g2d|BAG|A3|]
\`\`\`
:::
`,
};

/** A tune of many parts, all of its phrases unlike: two pages at any size. */
export function longTune(parts: number): string {
  const letters = 'DEFGABcdef';
  const bar = (n: number): string =>
    Array.from({ length: 8 }, (_, i) => letters[(n * 3 + i * (1 + (n % 4))) % letters.length]).join(
      '',
    );
  const part = (p: number): string =>
    `|:${Array.from({ length: 8 }, (_, b) => bar(p * 8 + b)).join('|')}:|`;
  const body = Array.from({ length: parts }, (_, p) => part(p)).join('\n');
  return `---\ntitle: The Long Causeway\n---\n\n:::tune{#causeway type=reel rights=own}\n\`\`\`abc\nX:1\nT:The Long Causeway\nM:4/4\nL:1/8\nK:D\n${body}\n\`\`\`\n:::\n`;
}

/** Prints a book of these files. `pictures`: its media, by path. */
export function printOf(
  texts: Readonly<Record<string, string>>,
  options: Partial<PrintOptions> = {},
  pictures: Readonly<Record<string, Buffer>> = {},
): Printed {
  const media = Object.keys(pictures);
  const book = bookOf('.', { texts: new Map(Object.entries(texts)), media });
  const words = wordsFor(book.settings.language, book.settings.noteNames);
  const tunes = tuneJobs(book, false).map(
    job => [job.block.id, drawTune(studyJob(job), words).built] as const,
  );
  return printBook(
    {
      book,
      tunes: new Map(tunes),
      draw: (study, cellWidth) => engraveTune(study, { cellWidth }),
      noteChain: block => noteChain(block, book.settings),
      picture: path => pictures[path] ?? null,
    },
    {
      what: 'book',
      paper: 'a4',
      audience: 'adults',
      steps: [1],
      marks: 'all',
      fingers: null,
      letters: null,
      order: 'lessons',
      only: null,
      ...options,
    },
    packageRoot(),
  );
}
