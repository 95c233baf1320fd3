import { randomBytes } from 'node:crypto';
import { mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';

/**
 * Takes the lock of a staging folder, so that two builds never write one site at once. Waits while a
 * running build holds it, and calls `onWait` once before. Returns a function that releases the lock.
 *
 * A lock holds the id of its process and when that process started, so that a lock left by a killed
 * build is recognised without comparing clocks, even where its id has been given to another process.
 */
export async function lockSite(staging: string, onWait: () => void): Promise<() => void> {
  const path = join(staging, 'lock');
  const own = JSON.stringify({ pid: process.pid, began: processStart(process.pid), by: token() });
  for (let waits = 0; ; waits++) {
    try {
      mkdirSync(staging, { recursive: true }); // the build before removes it at its end
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
      await pause(200); // it may be being written
    } else breakLock(path, held);
  }
}

/**
 * Removes the lock of a process that has ended. Renaming it decides between two builds that both found
 * it so: the renamed lock is read again, and put back where it is another one by now.
 */
function breakLock(path: string, dead: string | null): void {
  const aside = `${path}-${token()}`;
  try {
    renameSync(path, aside);
    if (readLock(aside) === dead) rmSync(aside);
    else renameSync(aside, path);
  } catch {
    // another build removed it first
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

/** Whether the process that a lock names is still running. */
function runs(lock: string): boolean {
  try {
    const { pid, began } = JSON.parse(lock) as { pid: number; began: string | null };
    process.kill(pid, 0); // signal 0 only tests that the process exists
    return began === null || began === processStart(pid);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Start time of a process on Linux (field 22 of `/proc/PID/stat`, see proc(5)); null elsewhere. */
function processStart(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, 'utf8');
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? null;
  } catch {
    return null;
  }
}

const token = (): string => randomBytes(6).toString('hex');
