import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** A file to be written where none stands. */
export interface NewFile {
  /** From the folder, with forward slashes. */
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** Writes files into a folder, and throws before it would write over one. */
export function writeNew(folder: string, files: readonly NewFile[]): void {
  for (const { path, content } of files) {
    const target = join(folder, path);
    mkdirSync(dirname(target), { recursive: true });
    writeFileSync(target, content, { flag: 'wx' });
  }
}
