import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, it } from 'vitest';

/** What V8 says of the compiled code that the bundle is loaded with, and what the command then says. */
const dist = join(import.meta.dirname, '../../dist');
const node = (...args: string[]): string =>
  spawnSync(process.execPath, args, { encoding: 'utf8' }).stdout;
const load = `
  import { loadBundle } from ${JSON.stringify(pathToFileURL(join(dist, 'load-bundle.js')).href)};
  console.log(loadBundle().script.cachedDataRejected);`;
const isRefused = (...flags: string[]): string => node(...flags, '--input-type=module', '-e', load);
const help = (...flags: string[]): string => node(...flags, join(dist, 'cli.js'), '--help');

it('the bundle is loaded with the code that it was compiled to', () => {
  expect(isRefused()).toBe('false\n');
});

it('code compiled under other flags is refused, and the command runs as ever', () => {
  expect(isRefused('--max-lazy')).toBe('true\n');
  expect(help()).toContain('Usage: bowbook');
  expect(help('--max-lazy')).toBe(help());
});
