import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The files of a site, by path from its root, each with the hash of its content. */
export type SiteState = ReadonlyMap<string, string>;

/** The files that the site's manifest lists; none before the first build. */
export function readSiteState(folder: string): SiteState {
  try {
    const text = readFileSync(join(folder, 'bowbook-manifest.json'), 'utf8');
    return new Map(Object.entries((JSON.parse(text) as { files: Record<string, string> }).files));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return new Map();
    throw error;
  }
}

/** Paths of files that were added, removed or changed between two states. */
export const changedFiles = (before: SiteState, after: SiteState): readonly string[] =>
  [...new Set([...before.keys(), ...after.keys()])].filter(
    path => before.get(path) !== after.get(path),
  );
