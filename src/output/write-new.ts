import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** A file to write where there is none yet. */
export interface NewFile {
  /** Relative to the folder, with forward slashes. */
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** Writes files into a folder, in order. Throws at the first that exists already. */
export function writeNew(folder: string, files: readonly NewFile[]): void {
  for (const { path, content } of files) {
    const target = join(folder, path);
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, content, { flag: 'wx' });
  }
}
