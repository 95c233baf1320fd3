import { Zip, ZipDeflate } from 'fflate';

/** A file to pack: its path with forward slashes, and how to come by its bytes. */
export interface PackedFile {
  readonly path: string;
  readonly read: () => Uint8Array;
}

/** Kinds of file that are packed tight already. */
const tight =
  /\.(?:mp3|m4a|aac|ogg|oga|opus|flac|mp4|m4v|webm|jpe?g|png|webp|avif|gif|woff2|pdf|zip)$/i;

/**
 * A site as one zip, in a folder of its own so that unpacking it scatters nothing. The same files
 * give the same bytes: they are sorted by path and all bear the first day that a zip can name.
 * Files are read one after another, so that only the zip itself is held. Throws where a path would
 * leave the folder, which is our defect and never a book's.
 */
export function siteZip(folder: string, files: readonly PackedFile[]): Uint8Array {
  const chunks: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    chunks.push(chunk);
  });
  for (const { path, read } of files.toSorted((a, b) => (a.path < b.path ? -1 : 1))) {
    // Files packed tight are deflated too, at no effort: a file that is stored, and whose size
    // comes after it, is one that not every program can unpack. Level 1 is twice as quick as the
    // usual 6, for a zip a little larger.
    const entry = new ZipDeflate(`${folder}/${insidePath(path)}`, {
      level: tight.test(path) ? 0 : 1,
    });
    // fflate writes the clock of the place it runs in: this is the same day in every place.
    entry.mtime = new Date(1980, 0, 1);
    zip.add(entry);
    entry.push(read(), true);
  }
  zip.end();
  return Buffer.concat(chunks);
}

function insidePath(path: string): string {
  const parts = path.split('/');
  if (path.includes('\\') || parts.some(p => p === '' || p === '.' || p === '..')) {
    throw new Error(`not a path inside the site: ${path}`);
  }
  return path;
}
