import { got } from '../../shared/must.ts';
import { leastMinutes, mostMinutes, usualMinutes } from '../../shared/review/review-file.ts';
import type { Words } from '../../shared/words/words-for.ts';
import { type LessonLink, lessonLink } from './lesson-link.ts';
import { tuneLink } from './lists-view.ts';
import type { PageContext } from './page-context.ts';
import type { TuneCard } from './tune-card.ts';

/** Data of the page about what to play today: every tune by lesson, and what its script needs of each. */
export interface ReviewView {
  readonly title: string;
  readonly labels: Words['reviewWords'];
  /** Name of the book, under which the script stores the record. */
  readonly book: string;
  readonly minutes: { readonly least: number; readonly most: number; readonly usual: number };
  readonly lessons: readonly (LessonLink & { readonly tunes: readonly ReviewTuneView[] })[];
  /** Tunes that no lesson has. */
  readonly others: readonly ReviewTuneView[];
}

interface ReviewTuneView {
  readonly id: string;
  readonly href: string;
  readonly title: string;
  readonly kind: string;
  /** Dates of its lessons: `2026-09-15 2026-09-22`. */
  readonly lessons: string;
  /** Its parts, and the seconds that each takes at the slow tempo: `A 24.6 B 24.6`. */
  readonly parts: string;
}

/** Makes the data of the page about what to play today. */
export function reviewView(context: PageContext): ReviewView {
  const { book, cards } = context.input;
  const { lessonsOf, tunesOf } = context.references;
  const { reviewWords } = context.words;
  const view = (card: TuneCard): ReviewTuneView => ({
    id: card.id,
    ...tuneLink(card, context.root),
    lessons: (lessonsOf.get(card.id) ?? []).flatMap(lesson => lesson.date ?? []).join(' '),
    parts: card.parts.map(partText).join(' '),
  });
  const viewsOf = (ids: readonly string[]): readonly ReviewTuneView[] =>
    ids.flatMap(id => {
      const card = cards.get(id);
      return card ? [view(card)] : [];
    });
  return {
    title: reviewWords.title,
    labels: reviewWords,
    book: book.settings.title,
    minutes: { least: leastMinutes, most: mostMinutes, usual: usualMinutes },
    lessons: book.lessons.flatMap(lesson => {
      const tunes = viewsOf(got(tunesOf.get(lesson.file), `list of tunes of ${lesson.file}`));
      return tunes.length === 0 ? [] : [{ ...lessonLink(lesson, context), tunes }];
    }),
    others: [...cards.values()].filter(card => !lessonsOf.get(card.id)?.length).map(view),
  };
}

const partText = ({ name, seconds }: TuneCard['parts'][number]): string =>
  `${name.replace(/\s+/g, '_')} ${Math.round(seconds * 10) / 10}`;
