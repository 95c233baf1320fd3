import { homedir } from 'node:os';
import { join } from 'node:path';
import { hashOf } from '../pipeline/hash-of.ts';

/**
 * Path of the folder that holds a book's cache: in the system's cache folder, or in `asked`. The
 * system's is never published, synchronised or committed, and people know that they may empty it. A
 * private build has a folder of its own, since its pages differ.
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
