import { studyTune } from '../../shared/study.ts';
import { wordsFor } from '../../shared/words/words-for.ts';
import { parseTunes } from '../abc/parse-tune.ts';
import type { ChainNote } from '../pages/site.ts';
import type { BookSettings, NotesBlock } from '../read/book.ts';

/** The notes of a `:notes[…]` chain, read without a key signature; null where the ABC cannot be parsed. */
export function noteChain(block: NotesBlock, settings: BookSettings): readonly ChainNote[] | null {
  const source = {
    text: `L:1/8\nK:none\n${block.abc}`,
    file: block.place.file,
    line: 1,
    indent: 0,
  };
  const tune = parseTunes(source).tunes[0];
  if (!tune) return null;
  const words = wordsFor(settings.language, settings.noteNames);
  const { performance, fingering, bowing } = studyTune(tune, {
    tuning: settings.tuning,
    bowing: settings.bowing,
    start: block.from ?? 'down',
    anchors: [],
    unit: null,
  });
  return performance.notes.flatMap((sounded, i) => {
    const note = tune.events[sounded.event];
    const stroke = bowing.plan.strokes[bowing.plan.strokeOf[i] ?? -1];
    if (note?.kind !== 'note' || !stroke) return [];
    const stop = fingering[sounded.event]?.at(-1) ?? null;
    return {
      letter: words.spokenPitches(note.pitches, words.noteNames),
      spoken: stop === null ? null : words.spokenStop(stop, settings.tuning, words.noteNames),
      direction: stroke.direction,
      slurred: stroke.notes[0] !== i,
    };
  });
}
