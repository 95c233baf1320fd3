// The reference of `build.bench.ts`: every tune of a book drawn by abcjs, one after another, in one
// document by jsdom, in one thread. Nothing is studied, and nothing is written.
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import abcjs from 'abcjs';
import { JSDOM } from 'jsdom';

const { window } = new JSDOM('<div id="page"></div>');
Object.assign(globalThis, { window, document: window.document, navigator: window.navigator });
const page = window.document.querySelector('#page');
const folder = join(process.argv[2], 'tunes');
let bytes = 0;
for (const name of readdirSync(folder)) {
  const abc = /```abc\n([\s\S]*?)```/.exec(readFileSync(join(folder, name), 'utf8'))?.[1] ?? '';
  try {
    abcjs.renderAbc(page, abc, { add_classes: true });
    bytes += page.innerHTML.length;
  } catch {
    // a few real tunes break it
  }
}
process.stdout.write(`${bytes}`);
