import type { PageContext } from '../page-context.ts';
import { render } from '../render.ts';

/** Makes the HTML of a sentence that stands in place of a block. */
export const noticeHtml = (text: string, { words }: PageContext): string =>
  render('parts/notice', { text }, words);
