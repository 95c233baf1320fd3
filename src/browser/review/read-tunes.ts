import { readDay } from '../../../shared/review/day.ts';
import type { ReviewTune } from '../../../shared/review/review-state.ts';

/** A tune of the page's list. */
export interface ListedTune extends ReviewTune {
  readonly title: string;
  readonly href: string;
}

/** The tunes that the page lists, each once, newest lesson first. */
export function readTunes(page: ParentNode): ReadonlyMap<string, ListedTune> {
  const tunes = new Map<string, ListedTune>();
  for (const item of page.querySelectorAll<HTMLElement>('[data-tune]')) {
    const { tune: id = '', lessons = '', parts = '' } = item.dataset;
    const link = item.querySelector('a');
    if (tunes.has(id)) continue;
    tunes.set(id, {
      id,
      title: item.querySelector('.name')?.textContent ?? id,
      href: link?.getAttribute('href') ?? '',
      lessons: lessons.split(' ').flatMap(text => readDay(text) ?? []),
      parts: readParts(parts),
    });
  }
  return tunes;
}

/** `A 24.6 B 24.6`; a tune that could not be read is one part. */
function readParts(text: string): ReviewTune['parts'] {
  const words = text.split(' ').filter(word => word !== '');
  const parts = words.flatMap((word, i) =>
    i % 2 === 0 ? [{ name: word.replaceAll('_', ' '), seconds: Number(words[i + 1]) || 0 }] : [],
  );
  return parts.length === 0 ? [{ name: '', seconds: 0 }] : parts;
}
