import { homedir } from 'node:os';
import { join } from 'node:path';
import { hashOf } from '../pipeline/hash-of.ts';

/**
 * Where the work of a book is kept from one build to the next: the cache folder of the system, which
 * no site is published from, which cloud drives and version control leave alone, and which people
 * know they may empty. A private copy has its own, since its pages differ.
 */
export function cacheFolder(root: string, isPrivate: boolean, asked?: string): string {
  return join(asked ?? systemCache(), hashOf(root).slice(0, 16), isPrivate ? 'private' : 'public');
}

function systemCache(): string {
  const { env, platform } = process;
  if (platform === 'win32') return join(env.LOCALAPPDATA ?? homedir(), 'bowbook', 'cache');
  if (platform === 'darwin') return join(homedir(), 'Library', 'Caches', 'bowbook');
  return join(env.XDG_CACHE_HOME ?? join(homedir(), '.cache'), 'bowbook');
}
