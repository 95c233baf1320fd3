import type { Root } from 'hast';
import type { BookSettings, TuneBlock } from './book.ts';
import type { FrontMatter } from './read-front-matter.ts';
import { rightsOf } from './rights.ts';
import type { TuneSeed } from './survey-page.ts';

/** A tune with all that is said of it: by its own block first, by its page next, by the book last. */
export function tuneBlock(
  { id, place, abc, facts }: TuneSeed,
  front: FrontMatter,
  settings: BookSettings,
  body: Root,
): TuneBlock {
  const [from] = [facts, front].filter(f => f.rights !== undefined || f.permission !== undefined);
  return {
    kind: 'tune',
    place,
    id,
    abc,
    rights: from ? rightsOf(from.rights, from.permission) : settings.rights,
    learnedFrom: facts['learned-from'] ?? front['learned-from'] ?? null,
    version: facts.version ?? front.version ?? null,
    type: facts.type ?? front.type ?? null,
    start: facts.start ?? front.start ?? null,
    restart: facts.restart ?? front.restart ?? null,
    tuning: facts.tuning ?? front.tuning ?? null,
    unit: facts.unit ?? front.unit ?? null,
    labels: facts.labels ?? front.labels ?? null,
    byEar: (facts.show ?? front.show) === 'ear',
    body,
  };
}
