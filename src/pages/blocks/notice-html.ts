import type { PageContext } from '../page-context.ts';
import { render } from '../render.ts';

/** A sentence in the place of a block that cannot be shown. */
export const noticeHtml = (text: string, { words }: PageContext): string =>
  render('parts/notice', { text }, words);
