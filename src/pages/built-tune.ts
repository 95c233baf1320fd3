import type { Plan } from '../../shared/bowing/bowing.ts';
import type { Study } from '../../shared/study.ts';
import type { Score } from '../engrave/score.ts';
import type { TuneBlock } from '../read/book.ts';

/** A tune as the pages need it: its study, its drawing, and what may be shown of it. */
export interface BuiltTune {
  readonly block: TuneBlock;
  /** null where the ABC could not be read. */
  readonly study: Study | null;
  /** null where the ABC could not be read or drawn. Whether it may be shown is `published`. */
  readonly score: Score | null;
  /** Drawings with the slurs of each plan that a page shows, by `planKey`; none for a plan that changes nothing. */
  readonly planned: ReadonlyMap<string, Score>;
  /** Rights are known, so that a published page may have its notes and sound. */
  readonly published: boolean;
  /** Composer, rights, source and version in one line. */
  readonly credits: string;
  /** Endings of its download files. */
  readonly downloads: readonly ('abc' | 'mid' | 'musicxml' | 'json')[];
}

/** Key of a plan among those of its tune. Plans with the same changes, of several anchors, share one. */
export const planKey = ({ changes }: Plan): string => JSON.stringify(changes);
