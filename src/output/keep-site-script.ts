import type { KeptSite } from '../../shared/kept-site.ts';
import type { WrittenFile } from './open-site.ts';

/** Downloads, which nobody needs to read the book: they are fetched when requested. */
const downloads = /\.(?:abc|json|mid|musicxml|pdf|zip|xml)$/;

/**
 * The text of a site's service worker: the list of files to keep on the device, then `script`.
 * Recordings are listed apart, since the student chooses whether to keep them; downloads are left out.
 */
export function keepSiteScript(
  written: ReadonlyMap<string, Pick<WrittenFile, 'hash' | 'size'>>,
  script: string,
): string {
  const files: Record<string, string> = {};
  const recordings: Record<string, string> = {};
  let recordingBytes = 0;
  const listed = [...written].filter(([path]) => !downloads.test(path));
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
