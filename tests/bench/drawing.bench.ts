import { gzipSync } from 'node:zlib';
import abcjs from 'abcjs';
import { JSDOM } from 'jsdom';
import { engraveTune } from '../../src/engrave/engrave-tune.ts';
import { studyBook } from '../../src/pipeline/pipeline.ts';
import { medianTime, ms } from './timing.ts';

/** The reference: each tune drawn whole by abcjs itself, in one document by jsdom. */
const { window } = new JSDOM('<div id="page"></div>');
Object.assign(globalThis, { window, document: window.document, navigator: window.navigator });
const page = window.document.querySelector('#page') as unknown as HTMLElement;
const drawPlainly = (abc: string): string => {
  abcjs.renderAbc(page, abc, { add_classes: true });
  return page.innerHTML;
};

console.log('Drawing: our surface, with strokes, fingers and letters, against abcjs in jsdom');
const { tunes } = await studyBook('content', () => {});
let [ours, plain] = [0, 0];
for (const { study } of tunes) {
  if (study === null) continue;
  const score = engraveTune(study);
  const svg =
    score.symbols + score.cells.map(c => c.svg).join('') + (score.cells[0]?.prelude ?? '');
  const reference = drawPlainly(study.tune.source.text);
  const own = medianTime(() => engraveTune(study), 9);
  const other = medianTime(() => drawPlainly(study.tune.source.text), 9);
  ours += own;
  plain += other;
  const size = (text: string): string =>
    `${(text.length / 1024).toFixed(1)} KB (${(gzipSync(text).length / 1024).toFixed(1)} gzipped)`;
  console.log(
    `  ${study.tune.title}: ${ms(own)}, ${size(svg)}; abcjs ${ms(other)}, ${size(reference)}`,
  );
}
console.log(`  all of them: ${(ours / plain).toFixed(2)} of the time`);
