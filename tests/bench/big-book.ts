import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { corpusFiles } from '../corpus/corpus.ts';

/**
 * Writes a book of so many tunes, the real ones over and over under other titles and with rights
 * given, a page each, and a lesson to every ten of them that shows one with its map.
 */
export function writeBigBook(root: string, count: number): void {
  const tunes = corpusFiles().flatMap(({ text }) =>
    text.split(/^(?=X:)/m).filter(part => part.startsWith('X:')),
  );
  for (const folder of ['tunes', 'lessons']) mkdirSync(join(root, folder), { recursive: true });
  writeFileSync(join(root, 'bowbook.yaml'), 'title: A big book\nrights: traditional\npdf: none\n');
  for (let i = 0; i < count; i++) {
    const abc = (tunes[i % tunes.length] ?? '').trim().replace(/^T:.*$/m, `T:Tune ${i + 1}`);
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
