import { engraveTune } from '../../src/engrave/engrave-tune.ts';
import { print } from '../../src/pipeline/print-pdf.ts';
import { studyJob } from '../../src/pipeline/study-job.ts';
import { tuneJobs } from '../../src/pipeline/tune-job.ts';
import type { PrintTune } from '../../src/print/print-input.ts';
import { bookOf } from '../../src/read/book-of.ts';
import { ms } from './timing.ts';

/** Bars that come back in another order, so that no two tunes of the book are alike. */
const bars = ['DFAF d2AF', 'GBAG FDEF', 'DFAF dABc', 'dAFE D2FE', 'fdAd fagf', 'ecAc efge'];
const part = (n: number): string =>
  Array.from({ length: 8 }, (_, i) => bars[(i * i * (n + 1) + 5 * n + i) % bars.length]).join('|');

const tuneFile = (n: number): string =>
  `---\ntitle: Tune ${n}\n---\n\n:::tune{#t${n} type=reel rights=own}\n\`\`\`abc\nX:1\nT:Tune ${n}\nM:4/4\nL:1/8\nK:D\n|:${part(n)}:|\n|:${part(n + 3)}:|\n\`\`\`\n:::\n`;

/** The reference of the same run: drawing the tunes once. */
console.log('Printing: the tune book as PDF, against drawing its tunes');
for (const count of [40, 400]) {
  const texts = new Map([['bowbook.yaml', 'title: Many tunes\n']]);
  for (let n = 0; n < count; n++) texts.set(`tunes/t${n}.md`, tuneFile(n));
  const book = bookOf('.', { texts, media: [] });
  const studied = tuneJobs(book, false).map(studyJob);
  const began = performance.now();
  const tunes = new Map(
    studied.map(({ block, study }): [string, PrintTune] => [
      block.id,
      { block, study, score: study && engraveTune(study), published: true, credits: 'Made up.' },
    ]),
  );
  const drawn = performance.now();
  const before = process.memoryUsage().rss;
  const { pdf, pages } = print(book, tunes, { what: 'book', order: 'tunes' });
  const printed = performance.now();
  const size = (bytes: number): string => `${(bytes / 1e6).toFixed(1)} MB`;
  console.log(
    `  ${count} tunes: drawing ${ms(drawn - began)}, printing ${ms(printed - drawn)} (${((printed - drawn) / (drawn - began)).toFixed(2)} of it), ${pages} pages, ${size(pdf.length)}, ${size(process.memoryUsage().rss - before)} of memory`,
  );
}
