import type { KeptSite } from '../../shared/kept-site.ts';
import type { WrittenFile } from './open-site.ts';

/** What a student can take away, but does not need to read the book: fetched when asked for. */
const takenAway = /\.(?:abc|json|mid|musicxml|pdf|zip|xml)$/;

/**
 * The service worker of a site: the list of what it keeps, then `script`. Recordings are listed apart,
 * since the student chooses whether to keep them. Pages of a private copy are kept like any other.
 */
export function keepSiteScript(
  written: ReadonlyMap<string, Pick<WrittenFile, 'hash' | 'size'>>,
  script: string,
): string {
  const files: Record<string, string> = {};
  const recordings: Record<string, string> = {};
  let recordingBytes = 0;
  const listed = [...written].filter(([path]) => !takenAway.test(path));
  for (const [path, { hash, size }] of listed.sort(([a], [b]) => (a < b ? -1 : 1))) {
    if (isRecording(path)) {
      recordings[path] = hash;
      recordingBytes += size;
    } else files[path] = hash;
  }
  const kept: KeptSite = { files, recordings, recordingBytes };
  return `const keptSite = ${JSON.stringify(kept)};\n${script}`;
}

const isRecording = (path: string): boolean =>
  path.startsWith('media/') && /\.(?:mp3|m4a|aac|ogg|oga|opus|wav|flac|mp4|m4v|webm)$/i.test(path);
