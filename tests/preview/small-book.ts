import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const tune = `:::tune{#kettle-on-the-sill}
\`\`\`abc
T:Kettle on the Sill
R:reel
M:4/4
L:1/8
K:D
|:DFAF GEFD|DFAF EDEz|DFAF GEFD|EDEF D4:|
|:fdad fdad|gece gece|fdad fgaf|gfed d4:|
\`\`\`
:::
`;

export const lessonText = (text: string): string =>
  `---\ntitle: First evening\n---\n\n${text}\n\n:::private\nBring the spare rosin.\n:::\n\n::tune{of=kettle-on-the-sill}\n`;

/** A little book in a folder of its own: a lesson, a lesson not finished, a tune and a recording. */
export function writeSmallBook(): string {
  const root = mkdtempSync(join(tmpdir(), 'bowbook-book-'));
  for (const folder of ['lessons', 'tunes', 'media']) mkdirSync(join(root, folder));
  const write = (path: string, text: string | Uint8Array) => writeFileSync(join(root, path), text);
  write('bowbook.yaml', 'title: The Kettle Class\nrights: own\npdf: none\n');
  write('tunes/kettle-on-the-sill.md', tune);
  write('lessons/2026-09-15-first-evening.md', lessonText('We walked it through.'));
  write(
    'lessons/2026-09-22-second-evening.md',
    '---\ntitle: Second evening\nunfinished: true\n---\n\nStill to be thought out.\n',
  );
  write('media/kettle 100%.wav', silence(12));
  return root;
}

/** An empty folder for a preview to build in. */
export const previewFolder = (): string => mkdtempSync(join(tmpdir(), 'bowbook-preview-'));

/** A recording of so many seconds in which nothing is heard (RIFF/WAVE, 8 bit mono at 8 kHz). */
function silence(seconds: number): Uint8Array {
  const length = seconds * 8000;
  const bytes = Buffer.alloc(44 + length, 128);
  bytes.write('RIFF', 0);
  bytes.writeUInt32LE(36 + length, 4);
  bytes.write('WAVEfmt ', 8);
  bytes.writeUInt32LE(16, 16);
  bytes.writeUInt16LE(1, 20);
  bytes.writeUInt16LE(1, 22);
  bytes.writeUInt32LE(8000, 24);
  bytes.writeUInt32LE(8000, 28);
  bytes.writeUInt16LE(1, 32);
  bytes.writeUInt16LE(8, 34);
  bytes.write('data', 36);
  bytes.writeUInt32LE(length, 40);
  return bytes;
}
