import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** A small book in two states: almost every page of the second differs, one tune is gone, one is new. */
export function writeSmallBook(root: string, state: 'before' | 'after'): void {
  rmSync(root, { recursive: true, force: true });
  for (const [file, text] of Object.entries(files(state))) {
    mkdirSync(dirname(join(root, file)), { recursive: true });
    writeFileSync(join(root, file), text);
  }
}

const tune = (id: string, title: string, bars: string): string =>
  `:::tune{#${id} type=reel rights=own}\nHow it came to us.\n\n\`\`\`abc\nX:1\nT:${title}\nM:4/4\nL:1/8\nK:D\n${bars}\n\`\`\`\n:::\n`;

const files = (state: 'before' | 'after'): Readonly<Record<string, string>> => ({
  'bowbook.yaml': `title: The ${state} book\nteacher: Ansa Loom\nrights: own\npdf: none\n`,
  'lessons/2026-03-03-first.md': `---\ntitle: First, ${state}\n---\n\nWords ${state}.\n\n::tune{of=pump}\n\n:::anchor{#land of=pump bars="A4" start=up}\nHere.\n:::\n\n::plan{to=land}\n`,
  'lessons/2026-03-10-second.md': `---\ntitle: Second\n---\n\nThe same in both.\n\n::map{of=pump}\n`,
  'tunes/pump.md': tune(
    'pump',
    'The Village Pump',
    state === 'before'
      ? '|:DFAF d2AF|GBAG FDEF|DFAF dABc|dAFE D4:|'
      : '|:DFAF (d2A)F|GBAG FDEF|DFAF dABc|dAFE D4:|',
  ),
  [`tunes/${state}.md`]: tune(
    state,
    `A tune of ${state}`,
    '|:d2fd Addf|e2ge Bege|d2fd Addf|gece d4:|',
  ),
  'media/note.txt': `A file to copy, ${state}.\n`,
});
