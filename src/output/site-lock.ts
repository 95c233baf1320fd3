import { randomBytes } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

/**
 * Takes the lock of a staging folder, so that two builds never write one site at once; waits while
 * another build that still runs has it, and calls `onWait` once before. A lock names its process and
 * when that began, so that one left by a killed build is known for what it is, by no clock. Returns
 * how to let it go.
 */
export async function lockSite(staging: string, onWait: () => void): Promise<() => void> {
  const path = join(staging, 'lock');
  const own = JSON.stringify({ pid: process.pid, began: processStart(process.pid), by: token() });
  for (let waits = 0; ; waits++) {
    try {
      mkdirSync(staging, { recursive: true }); // the build waited for takes it away at its end
      writeFileSync(path, own, { flag: 'wx' });
      return () => rmSync(path, { force: true });
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'ENOENT' && waits < 100) continue;
      if (code !== 'EEXIST') throw error;
    }
    const held = readLock(path);
    if (held !== null && runs(held)) {
      if (waits === 0) onWait();
      await pause(100);
    } else if (held === null && waits === 0) {
      await pause(200); // perhaps it is just being written
    } else breakLock(path, held);
  }
}

/**
 * Takes a dead lock away. Moving it aside decides between two builds that both found it dead: what
 * was moved is looked at again, and put back where it is no longer the same.
 */
function breakLock(path: string, dead: string | null): void {
  const aside = `${path}-${token()}`;
  try {
    renameSync(path, aside);
    if (readLock(aside) === dead) rmSync(aside);
    else renameSync(aside, path);
  } catch {
    // another build was quicker
  }
}

function readLock(path: string): string | null {
  try {
    const text = readFileSync(path, 'utf8');
    return text === '' ? null : text;
  } catch {
    return null;
  }
}

function runs(lock: string): boolean {
  try {
    const { pid, began } = JSON.parse(lock) as { pid: number; began: string | null };
    process.kill(pid, 0); // asks only whether it is there
    return began === null || began === processStart(pid);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** When a process began, where the system tells (Linux: field 22 of its `stat`); else null. */
function processStart(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? null;
  } catch {
    return null;
  }
}

const token = (): string => randomBytes(6).toString('hex');
