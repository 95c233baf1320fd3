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
  /** The tune drawn with the slurs of each plan that a page shows, by its `planKey`, where they are not the tune's. */
  readonly planned: ReadonlyMap<string, Score>;
  /** Rights are known, so notation and sound may stand on a published page. */
  readonly published: boolean;
  /** Composer, rights, source and version in one line. */
  readonly credits: string;
  /** Endings of the files that stand beside its page to be taken away. */
  readonly downloads: readonly ('abc' | 'mid' | 'musicxml' | 'json')[];
}

/** Names a plan of a tune by what it changes: plans of several anchors may change the same. */
export const planKey = ({ changes }: Plan): string => JSON.stringify(changes);
