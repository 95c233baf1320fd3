import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { got } from '../../shared/must.ts';
import type { WrittenFile } from './open-site.ts';

/** File that lists what Bowbook wrote into a site, so that it never touches other files there. */
export const manifestName = 'bowbook-manifest.json';

/** The manifest's text: each file's path and SHA-256, sorted by path. */
export function manifestText(written: ReadonlyMap<string, WrittenFile>): string {
  const paths = [...written.keys()].sort();
  const line = (path: string) =>
    `  ${JSON.stringify(path)}: "${got(written.get(path), path).hash}"`;
  const lines = paths.map(line);
  return `{\n "bowbook": 1,\n "files": {\n${lines.join(',\n')}\n }\n}\n`;
}

/** The text of a site's manifest; empty where there is none that can be read. */
export function readManifest(folder: string): string {
  try {
    return readFileSync(join(folder, manifestName), 'utf8');
  } catch {
    return '';
  }
}

/** The paths that a manifest lists; none where its text is empty or damaged. */
export function pathsIn(manifest: string): readonly string[] {
  try {
    const read: unknown = JSON.parse(manifest);
    return Object.keys((read as { files?: object }).files ?? {});
  } catch {
    return []; // no file is known to be Bowbook's, so none is removed
  }
}
