import { Zip, ZipDeflate } from 'fflate';

/** A file to pack: its path with forward slashes, and a function that reads its bytes. */
export interface PackedFile {
  readonly path: string;
  readonly read: () => Uint8Array;
}

/** Endings of files that are compressed already. */
const tight =
  /\.(?:mp3|m4a|aac|ogg|oga|opus|flac|mp4|m4v|webm|jpe?g|png|webp|avif|gif|woff2|pdf|zip)$/i;

/**
 * Packs files into one zip, inside a folder of the given name. The same files give the same bytes:
 * they are sorted by path, and all are dated 1 January 1980, the first day that a zip can state. Files
 * are read one after another, so that memory holds one file and the zip. Throws where a path leads
 * out of the folder, which is a defect of the program.
 */
export function siteZip(folder: string, files: readonly PackedFile[]): Uint8Array {
  const chunks: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    chunks.push(chunk);
  });
  for (const { path, read } of files.toSorted((a, b) => (a.path < b.path ? -1 : 1))) {
    // Compressed files are deflated too, at level 0: not every program can unpack a stored file
    // whose size follows it. Level 1 takes half the time of the usual 6, for a slightly larger zip.
    const entry = new ZipDeflate(`${folder}/${insidePath(path)}`, {
      level: tight.test(path) ? 0 : 1,
    });
    // fflate writes local time: a local date is the same in every time zone.
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
