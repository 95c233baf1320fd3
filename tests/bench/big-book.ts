import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { benchTunes } from './bench-tunes.ts';

/**
 * Writes a book of so many tunes, those to measure with over and over under other titles and with rights
 * given, a page each, and a lesson to every ten of them that shows one with its map.
 */
export function writeBigBook(root: string, count: number): void {
  for (const folder of ['tunes', 'lessons']) mkdirSync(join(root, folder), { recursive: true });
  writeFileSync(join(root, 'bowbook.yaml'), 'title: A big book\nrights: traditional\npdf: none\n');
  for (let i = 0; i < count; i++) {
    const abc = (benchTunes[i % benchTunes.length] ?? '')
      .trim()
      .replace(/^T:.*$/m, `T:Tune ${i + 1}`);
    const text = `:::tune{#tune-${i}}\n\`\`\`abc\n${abc}\n\`\`\`\n:::\n`;
    writeFileSync(join(root, 'tunes', `tune-${i}.md`), text);
    if (i % 10 === 0) writeFileSync(lessonFile(root, i / 10), lesson(i));
  }
}

export const lessonFile = (root: string, n: number): string => {
  const day = new Date(Date.UTC(2000, 0, 4 + 7 * n)).toISOString().slice(0, 10);
  return join(root, 'lessons', `${day}-evening.md`);
};

const lesson = (i: number): string =>
  `---\ntitle: Evening ${i / 10 + 1}\n---\n\nWhat we did.\n\n::tune{of=tune-${i}}\n\n::map{of=tune-${i}}\n`;
