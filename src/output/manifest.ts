import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { WrittenFile } from './open-site.ts';

/** Lists what Bowbook wrote in this folder, so that it never touches what it did not write. */
export const manifestName = 'bowbook-manifest.json';

/** Text of the manifest of what was written. */
export function manifestText(written: ReadonlyMap<string, WrittenFile>): string {
  const paths = [...written.keys()].sort();
  const lines = paths.map(path => `  ${JSON.stringify(path)}: "${written.get(path)?.hash}"`);
  return `{\n "bowbook": 1,\n "files": {\n${lines.join(',\n')}\n }\n}\n`;
}

/** The manifest as it stands in the site; empty where it has none that can be read. */
export function readManifest(folder: string): string {
  try {
    return readFileSync(join(folder, manifestName), 'utf8');
  } catch {
    return '';
  }
}

/** Paths of what a manifest lists. */
export function pathsIn(manifest: string): readonly string[] {
  try {
    const read: unknown = JSON.parse(manifest);
    return Object.keys((read as { files?: object }).files ?? {});
  } catch {
    return []; // none yet, or torn: nothing is known to be ours, so nothing is removed
  }
}
