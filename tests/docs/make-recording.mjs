// `node tests/docs/make-recording.mjs`: makes the demo's recording anew, the first part of a jig played once
// by the fiddle of `shared/sound/`. `lame` (Debian's package of that name) writes it as MP3.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { templatesForEsbuild } from '../../src/bundling/templates-plugin.mjs';

const root = join(import.meta.dirname, '../..');
const work = mkdtempSync(join(tmpdir(), 'bowbook-recording-'));
const rate = 24_000;

/** Samples from -1 to 1 as a WAV file of one channel and 16 bits. */
function wav(samples) {
  const file = Buffer.alloc(44 + 2 * samples.length);
  file.write('RIFF', 0);
  file.writeUInt32LE(36 + 2 * samples.length, 4);
  file.write('WAVEfmt ', 8);
  file.writeUInt32LE(16, 16);
  file.writeUInt16LE(1, 20); // PCM
  file.writeUInt16LE(1, 22);
  file.writeUInt32LE(rate, 24);
  file.writeUInt32LE(2 * rate, 28);
  file.writeUInt16LE(2, 32);
  file.writeUInt16LE(16, 34);
  file.write('data', 36);
  file.writeUInt32LE(2 * samples.length, 40);
  for (const [i, s] of samples.entries()) file.writeInt16LE(Math.round(s * 32_767), 44 + 2 * i);
  return file;
}

try {
  await build({
    stdin: {
      contents: `export { studyBook } from './src/pipeline/pipeline.ts';
        export { passagesOf } from './shared/sound/passage.ts';
        export { soundPassage } from './shared/sound/sound-passage.ts';
        export { liltAt, liltRange } from './shared/sound/lilt.ts';
        export { renderWhole } from './tests/sound/render-whole.ts';`,
      resolveDir: root,
    },
    bundle: true,
    platform: 'node',
    format: 'esm',
    packages: 'external',
    outfile: join(root, 'dist/bench/recording.mjs'),
    plugins: [templatesForEsbuild],
    logLevel: 'error',
  });
  const from = pathToFileURL(join(root, 'dist/bench/recording.mjs')).href;
  const { liltAt, liltRange, passagesOf, renderWhole, soundPassage, studyBook } = await import(
    from
  );
  const { tunes } = await studyBook(join(root, 'content'), () => {});
  const { study } = tunes.find(tune => tune.block.id === 'the-ice-house-stairs');
  const last = study.map.phrases.findLastIndex(phrase => phrase.part === 0);
  const [once] = passagesOf(study, { kind: 'phrases', first: 0, last });
  const played = soundPassage(study, once, {
    tempo: { beat: { n: 3, d: 8 }, perMinute: 84 },
    lilt: liltAt(liltRange(study.tune), 1),
    breath: 0,
    answer: false,
    pulse: false,
  });
  writeFileSync(join(work, 'part.wav'), wav(renderWhole(played, rate)));
  const mp3 = join(root, 'content/media/stairs-first-part.mp3');
  execFileSync('lame', ['--quiet', '-m', 'm', '-b', '48', join(work, 'part.wav'), mp3]);
} finally {
  rmSync(work, { recursive: true });
}
