import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, rmdirSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { inject } from 'vitest';

declare module 'vitest' {
  interface ProvidedContext {
    /** A folder for what the test files of one run share; deleted at its end. */
    readonly sharedFolder: string;
  }
}

/**
 * The demo book as the command builds it, once for all test files of a run: whichever needs it first
 * builds it, and the others wait. Tests read it and change nothing.
 */
export async function builtDemo(): Promise<string> {
  const folder = inject('sharedFolder');
  const [site, done, lock] = ['site', 'site/bowbook-manifest.json', 'lock'].map(name =>
    join(folder, name),
  ) as [string, string, string];
  while (!existsSync(done)) {
    if (!isFirst(lock)) {
      await wait(200);
      continue;
    }
    try {
      build(site, join(folder, 'cache'));
    } finally {
      rmdirSync(lock);
    }
  }
  return site;
}

function isFirst(lock: string): boolean {
  try {
    mkdirSync(lock);
    return true;
  } catch {
    return false; // another test file is at it
  }
}

function build(site: string, cache: string): void {
  const root = join(import.meta.dirname, '../..');
  const command = ['dist/cli.js', 'build', 'content', '--out', site, '--cache', cache];
  execFileSync(process.execPath, command, { cwd: root, stdio: 'ignore' });
}
