import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

/**
 * Run as a process of its own: writes a site of some files and kills itself just before the n-th
 * change to the disk; prints how many changes there were, where it was not killed.
 */
const [, , folder = '', state = '', nth = '0'] = process.argv;
let changes = 0;
for (const name of [
  'writeFileSync',
  'renameSync',
  'rmSync',
  'mkdirSync',
  'rmdirSync',
  'copyFileSync',
] as const) {
  const real = fs[name] as (...args: unknown[]) => unknown;
  Object.assign(fs, {
    [name]: (...args: unknown[]) => {
      changes++;
      if (changes === Number(nth)) process.kill(process.pid, 'SIGKILL');
      return real(...args);
    },
  });
}
syncBuiltinESMExports();

const { openSite } = await import('../../src/output/open-site.ts');
const site = await openSite(folder, new Map(), () => {});
for (const path of ['assets/book.css', 'index.html', 'tunes/pump.html', `tunes/${state}.html`]) {
  await site.put({ path, content: `${path} ${state} ${'words '.repeat(2000)}` });
}
site.commit();
process.stdout.write(`${changes}`);
