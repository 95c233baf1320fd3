import { type ZippableFile, zipSync } from 'fflate';

/** A file to pack: its path with forward slashes, and its bytes. */
export interface PackedFile {
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** Kinds of file that are packed tight already. */
const tight =
  /\.(?:mp3|m4a|aac|ogg|oga|opus|flac|mp4|m4v|webm|jpe?g|png|webp|avif|gif|woff2|pdf|zip)$/i;

/**
 * A site as one zip, in a folder of its own so that unpacking it scatters nothing. The same files
 * give the same bytes: they are sorted by path and all bear the first day that a zip can name.
 * Throws where a path would leave the folder, which is our defect and never a book's.
 */
export function siteZip(folder: string, files: readonly PackedFile[]): Uint8Array {
  // fflate writes the clock of the place it runs in: this is the same day in every place.
  const mtime = new Date(1980, 0, 1);
  const sorted = files.toSorted((a, b) => (a.path < b.path ? -1 : 1));
  const entries = sorted.map(({ path, bytes }): [string, ZippableFile] => {
    const level = tight.test(path) ? 0 : 6;
    return [`${folder}/${insidePath(path)}`, [bytes, { level, mtime }]];
  });
  return zipSync(Object.fromEntries(entries));
}

function insidePath(path: string): string {
  const parts = path.split('/');
  if (path.includes('\\') || parts.some(p => p === '' || p === '.' || p === '..')) {
    throw new Error(`not a path inside the site: ${path}`);
  }
  return path;
}
