import type { Tune } from '../../shared/music/tune.ts';
import { at } from '../../shared/must.ts';

/** What a tune's ABC has at a note or rest that a `Tune` has no place for. */
export interface WrittenSigns {
  readonly fermata: boolean;
  /** Annotations (ABC 2.1, section 4.19) before it. */
  readonly words: readonly string[];
  /** Those after it and before the next: at a bar line, `D.C.`. */
  readonly wordsAfter: readonly string[];
}

/** The signs of an event. `H` is the fermata unless `U:` says otherwise (sections 4.14 and 4.16). */
export function writtenSigns(tune: Tune, index: number): WrittenSigns {
  const { text } = tune.source;
  const { start, stop } = at(tune.events, index);
  const written = text.slice(start, stop);
  const [after = ''] = text.slice(stop, tune.events[index + 1]?.start).split('\n');
  const signs = written.replace(/"[^"]*"|\{[^}]*\}|\[[A-Za-z]:[^\]]*\]/g, '');
  return {
    fermata: /!(?:inverted)?fermata!/.test(signs) || /H/.test(signs.replace(/![^!]*!/g, '')),
    words: annotations(written),
    wordsAfter: annotations(after),
  };
}

const annotations = (abc: string): readonly string[] =>
  [...abc.matchAll(/"([^"]*)"/g)].flatMap(m => /^[\^_<>@](.+)/.exec(m[1] ?? '')?.[1]?.trim() || []);
