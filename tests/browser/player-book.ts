import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import sirv from 'sirv';
import { buildSite } from '../../src/incremental/open-builds.ts';

/** The demo book with recordings put in and the rights of one tune taken out, built and served. */
export interface PlayerBook {
  readonly site: string;
  /** Roots to open it by: from its folder, and over http. */
  readonly roots: { readonly file: string; readonly http: string };
  readonly close: () => void;
}

/** The tune whose rights are not known here. */
export const withheld = 'mind-the-bollard';
/** The lesson with the recordings. */
export const lesson = 'lessons/2026-09-22-three-in-a-bow.html';

export async function openPlayerBook(): Promise<PlayerBook> {
  const work = mkdtempSync(join(tmpdir(), 'bowbook-player-'));
  const [root, site] = [join(work, 'book'), join(work, 'site')];
  cpSync(join(import.meta.dirname, '../../content'), root, { recursive: true });
  const edit = (file: string, change: (text: string) => string): void =>
    writeFileSync(join(root, file), change(readFileSync(join(root, file), 'utf8')));
  edit(`tunes/${withheld}.md`, text => text.replace(/^rights: .*\n/m, ''));
  // Nothing is to be heard on paper.
  edit('bowbook.yaml', text => `${text.replace(/^pdf:.*\n(?:[ -].*\n)*/m, '')}\npdf: none\n`);
  mkdirSync(join(root, 'media'), { recursive: true });
  writeFileSync(join(root, 'media/tide.wav'), countingTone(24));
  edit(lesson.replace('.html', '.md'), text => `${text}\n${recordings}\n`);
  const result = await buildSite({ root, out: site, isPrivate: false, progress: () => {} });
  if (result.failed) throw new Error('the book with recordings does not build');
  const files = sirv(site, { dev: true });
  const server = createServer((request, response) => files(request, response));
  await new Promise<void>(done => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as AddressInfo;
  return {
    site,
    roots: { file: `${pathToFileURL(site).href}/`, http: `http://127.0.0.1:${port}/` },
    close: () => {
      server.close();
      server.closeAllConnections();
      rmSync(work, { recursive: true, force: true });
    },
  };
}

/** Two bars in four seconds: the first part once, in sixteen. */
const recordings = `
::clip[The first part, played slowly]{src=media/tide.wav of=the-tide-table at="A1=0:02 A3=0:06 A5=0:10 A7=0:14"}

::clip[The whole tune, kept elsewhere]{link="https://example.org/tide" of=the-tide-table}

::clip[One of us, who was not asked]{src=media/tide.wav of=the-tide-table start=0:00 tempo=60 learner}
`;

/** So many seconds of sound, mono, 16 bits, 8 kHz: a tone that is higher each second. */
function countingTone(seconds: number): Buffer {
  const rate = 8000;
  const samples = Int16Array.from({ length: seconds * rate }, (_, i) => {
    const second = Math.floor(i / rate);
    return Math.round(6000 * Math.sin((2 * Math.PI * (300 + 20 * second) * i) / rate));
  });
  const head = Buffer.alloc(44);
  head.write('RIFF', 0);
  head.writeUInt32LE(36 + samples.byteLength, 4);
  head.write('WAVEfmt ', 8);
  head.writeUInt32LE(16, 16);
  head.writeUInt16LE(1, 20);
  head.writeUInt16LE(1, 22);
  head.writeUInt32LE(rate, 24);
  head.writeUInt32LE(2 * rate, 28);
  head.writeUInt16LE(2, 32);
  head.writeUInt16LE(16, 34);
  head.write('data', 36);
  head.writeUInt32LE(samples.byteLength, 40);
  return Buffer.concat([head, Buffer.from(samples.buffer)]);
}
