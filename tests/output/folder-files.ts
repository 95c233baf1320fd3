import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

/** Every file under a folder, by its path with forward slashes, as the hash of its bytes. */
export function folderFiles(folder: string): ReadonlyMap<string, string> {
  if (!existsSync(folder)) return new Map();
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
  const files = entries.filter(e => e.isFile()).map(e => join(e.parentPath, e.name));
  return new Map(
    files
      .sort()
      .map(
        file => [relative(folder, file).split(sep).join('/'), hash(readFileSync(file))] as const,
      ),
  );
}

const hash = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex');
