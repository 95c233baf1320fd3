import { studyTune } from '../../shared/study.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { parseTunes } from '../../src/abc/parse-tune.ts';
import { engraveTune } from '../../src/engrave/engrave-tune.ts';
import type { BuiltTune } from '../../src/pages/built-tune.ts';
import { tuneCard } from '../../src/pages/tune-card.ts';
import { bodyHtml } from '../../src/read/body-html.ts';
import type { AnchorBlock, Book, TuneBlock } from '../../src/read/book.ts';
import { bookOf } from '../../src/read/book-of.ts';
import { makeEveryPage, type SitePage } from './make-every-page.ts';

/** A small class of our own: two lessons, a page, a tune without rights, a private note. */
const files: Readonly<Record<string, string>> = {
  'bowbook.yaml': 'title: The <Quay> & Fiddle\nteacher: Ansa Loom\nabout: Evenings on the quay.\n',
  'lessons/2026-03-03-first.md': `---
title: The first evening
date: 2026-03-03
---

Start :stroke[down], not :stroke[up]. See [the reel](../tunes/quay-reel.md).

:::tune{#lantern type=reel}
Heard through a window.

\`\`\`abc
X:1
T:Lantern in the Rain
M:4/4
L:1/8
K:G
|:GBdB cAFA|GBdB A2FA|GBdB cAFA|DFAF G4:|
\`\`\`
:::

::map{of=lantern}
`,
  'lessons/2026-03-10-second.md': `---
title: The second evening
date: 2026-03-10
summary: Getting there.
---

:::anchor{#turn of=quay-reel bars="A4" start=up}
The whole class lands here.
:::

::plan{to=turn}

::tune{of=quay-reel bars="A3-A4"}

:::private
The heron does not know the tune.

::map{of=lantern}

::plan{to=turn}
:::
`,
  'tunes/quay-reel.md': `---
title: The Quay Reel
---

::::tune{#quay-reel type=reel rights=own}
\`\`\`abc
X:1
T:The Quay Reel
M:4/4
L:1/8
K:D
|:DFAF d2AF|GBAG FDEF|DFAF dABc|dAFE D4:|
\`\`\`

A story with a point.

:::private
Play it slower than they want.
:::
::::
`,
  'pages/about.md': '---\ntitle: About\n---\n\nWe meet on Tuesdays.\n',
};

export const demoBook = (): Book =>
  bookOf('.', { texts: new Map(Object.entries(files)), media: [] });

/** Pages of a book with nothing in it yet. */
export const emptyPages = (): readonly SitePage[] =>
  makeEveryPage({
    book: bookOf('.', { texts: new Map([['bowbook.yaml', 'title: Nothing yet\n']]), media: [] }),
    tunes: new Map(),
    cards: new Map(),
    bodyHtml,
    noteChain: () => null,
    isPrivate: false,
  });

/** `unread`: as if no ABC could be read. */
export const demoPages = (isPrivate: boolean, unread = false): readonly SitePage[] =>
  pagesOf(demoBook(), isPrivate, unread);

/** Pages of a book without note chains. */
export function pagesOf(book: Book, isPrivate = false, unread = false): readonly SitePage[] {
  const blocks = [...book.lessons, ...book.tunePages, ...book.pages].flatMap(p => p.blocks);
  const anchors = blocks.filter((b): b is AnchorBlock => b.kind === 'anchor');
  const tunes = blocks
    .filter((b): b is TuneBlock => b.kind === 'tune')
    .map(block => build(book, block, anchors))
    .map(tune => [tune.block.id, unread ? { ...tune, study: null, score: null } : tune] as const);
  const words = wordsFor(book.settings.language, book.settings.noteNames);
  return makeEveryPage({
    book,
    tunes: new Map(tunes),
    cards: new Map(
      tunes.map(([id, tune]) => [id, tuneCard(tune, isPrivate, book.settings.bowing, words)]),
    ),
    bodyHtml,
    noteChain: () => null,
    isPrivate,
  });
}

function build(book: Book, block: TuneBlock, anchors: readonly AnchorBlock[]): BuiltTune {
  const { tunes } = parseTunes(block.abc, { id: block.id });
  if (!tunes[0]) throw new Error(`the test's tune ${block.id} cannot be read`);
  const study = studyTune(tunes[0], {
    tuning: block.tuning ?? book.settings.tuning,
    bowing: book.settings.bowing,
    start: block.start,
    unit: block.unit,
    labels: block.labels,
    anchors: anchors.filter(a => a.of === block.id).map(a => ({ ...a, level: null, preset: null })),
  });
  return {
    block,
    study,
    score: engraveTune(study),
    planned: new Map(),
    published: block.rights !== null,
    downloads: [],
    credits: block.rights === null ? 'Rights unknown' : 'Ansa Loom',
  };
}
