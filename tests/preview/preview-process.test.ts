import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { writeSmallBook } from './small-book.ts';

const project = join(import.meta.dirname, '../..');
const book = writeSmallBook();
const work = mkdtempSync(join(tmpdir(), 'bowbook-process-'));

afterAll(() => {
  for (const folder of [book, work]) rmSync(folder, { recursive: true, force: true });
});

/** Starts the command with a folder for temporary files of its own. */
function start(name: string, port: number) {
  const temporary = join(work, name);
  mkdirSync(temporary);
  const args = ['preview', book, '--no-open', '--cache', join(work, 'cache'), '--port', `${port}`];
  const child = spawn(process.execPath, ['dist/cli.js', ...args], {
    cwd: project,
    env: { ...process.env, TMPDIR: temporary },
  });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (part: Buffer) => {
      said += part.toString();
    });
  }
  const ended = new Promise<number | null>(resolve => child.once('exit', resolve));
  const until = async (isSo: () => boolean): Promise<void> => {
    while (!isSo()) {
      if (child.exitCode !== null) throw new Error(`ended with ${child.exitCode}: ${said}`);
      await new Promise(resolve => setTimeout(resolve, 10));
    }
  };
  const ready = () => until(() => said.includes('Ctrl-C'));
  return { child, temporary, ended, until, ready, said: () => said };
}

const isFree = (port: number): Promise<boolean> =>
  new Promise(resolve => {
    const server = createServer();
    server.once('error', () => resolve(false));
    server.listen(port, '127.0.0.1', () => server.close(() => resolve(true)));
  });

describe('the process of a preview', () => {
  it.each(['SIGINT', 'SIGTERM', 'SIGHUP'] as const)(
    'ends on %s with its port free and its folder gone, while a page listens',
    async signal => {
      const { child, temporary, ended, ready, said } = start(signal, 0);
      await ready();
      const address = /http:\/\/127\.0\.0\.1:(\d+)\//.exec(said());
      const port = Number(address?.[1]);
      const listening = await fetch(`http://127.0.0.1:${port}/preview/news`);
      expect(listening.status).toBe(200);
      expect(await isFree(port)).toBe(false);
      expect(readdirSync(temporary).length).toBeGreaterThan(0);
      child.kill(signal);
      expect(await ended).toBe(0);
      await listening.text().catch(() => {});
      expect(() => process.kill(child.pid ?? 0, 0)).toThrow(/ESRCH/);
      expect(await isFree(port)).toBe(true);
      expect(readdirSync(temporary)).toEqual([]);
    },
  );

  it('ends in the midst of its first build, and leaves nothing', async () => {
    const { child, temporary, ended, until, said } = start('early', 0);
    await until(() => readdirSync(temporary, { recursive: true }).length > 1);
    expect(said()).toBe('');
    child.kill('SIGINT');
    expect(await ended).toBe(0);
    expect(readdirSync(temporary)).toEqual([]);
  });

  it('explains a port that is in use, and takes the next', async () => {
    const other = createServer();
    await new Promise<void>(done => other.listen(0, '127.0.0.1', done));
    const { port } = other.address() as { port: number };
    const { child, ended, ready, said } = start('busy', port);
    await ready();
    expect(said()).toContain(`Port ${port} is in use by another program`);
    expect(said()).not.toContain(`127.0.0.1:${port}/`);
    child.kill('SIGINT');
    expect(await ended).toBe(0);
    await new Promise(done => other.close(done));
  });

  it('says what a port is where none is named, and exits 2', () => {
    const { status, stderr } = spawnSync(
      process.execPath,
      ['dist/cli.js', 'preview', book, '--port', 'front'],
      { cwd: project, encoding: 'utf8' },
    );
    expect([status, stderr]).toEqual([2, expect.stringContaining('a number from 0 to 65535')]);
    expect(existsSync(join(book, 'site'))).toBe(false);
  });
});
