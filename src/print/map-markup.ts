import { toNumber } from '../../shared/music/fraction.ts';
import { type NoteNames, noteSymbol } from '../../shared/music/note-names.ts';
import { timesThrough } from '../../shared/music/times-through.ts';
import { at } from '../../shared/must.ts';
import { familyOfLabel } from '../../shared/sections/phrase-labels.ts';
import type { Phrase } from '../../shared/sections/section-map.ts';
import type { Study } from '../../shared/study.ts';
import { call, list, literal, type Markup, named } from './markup.ts';
import { type PrintContext, tuneText } from './print-context.ts';
import type { PrintTune } from './print-input.ts';

/** Number of patterns that the template has for families. */
const patterns = 6;
/** Most notes that a block names. */
const namedNotes = 3;

/** Makes the section map of a tune: a block for each phrase, in rows by part; empty where it has no phrases. */
export function mapMarkup(context: PrintContext, tune: PrintTune, study: Study): Markup {
  const { phrases } = study.map;
  if (phrases.length === 0) return '';
  const families = [...new Set(phrases.map(p => familyOfLabel(p.label)))];
  const block = (phrase: Phrase): string =>
    `(${[
      named('label', literal(tuneText(context, tune, phrase.label))),
      named('notes', literal(openingLetters(study, phrase, context.words.noteNames))),
      named('kin', literal(phrase.kin)),
      named('family', (families.indexOf(familyOfLabel(phrase.label)) % patterns) + 1),
      named('differs', differsAt(study, phrase) ?? 'none'),
    ].join(', ')})`;
  const parts = study.tune.parts.flatMap((part, index) => {
    const own = phrases.filter(p => p.part === index);
    if (own.length === 0) return [];
    const times = context.words.siteWords.timesThrough(
      timesThrough(study.tune, study.performance, index),
    );
    const name = tuneText(context, tune, `${context.words.siteWords.part(part.name)}, ${times}`);
    return [`(${named('name', literal(name))}, ${named('phrases', list(own.map(block)))})`];
  });
  const told = phrases.map(p =>
    context.words.printWords.phraseTold(
      p.label,
      p.name,
      context.words.kinSentence(study.tune, study.map, p, context.words.noteNames),
    ),
  );
  return call('map', [list(parts), literal(context.words.printWords.mapOf(told.join(' ')))]);
}

/** The first notes of a phrase as letters, without its pickup: `D F A`. */
function openingLetters({ tune }: Study, phrase: Phrase, names: NoteNames): string {
  const full = phrase.bars.map(b => tune.bars[b]).find(bar => bar && !bar.pickup);
  return tune.events
    .slice(full?.first ?? phrase.first, phrase.end)
    .flatMap(e => (e.kind === 'note' ? (e.pitches.at(-1) ?? []) : []))
    .slice(0, namedNotes)
    .map(top => noteSymbol(top, names).symbol)
    .join(' ');
}

/**
 * Place of the first note of a phrase that differs from its kin, from 0 to 1, all bars taken as equally long; null
 * where none is known.
 */
function differsAt({ tune }: Study, phrase: Phrase): number | null {
  if (phrase.firstDifference === null) return null;
  const event = at(tune.events, phrase.firstDifference);
  const bars = phrase.bars.filter(b => !at(tune.bars, b).pickup);
  const before = bars.indexOf(event.bar);
  if (before < 0) return null;
  const within = toNumber(event.onset) / toNumber(at(tune.bars, event.bar).length);
  const eighth = Math.min(7, Math.floor(((before + within) / bars.length) * 8));
  return (eighth + 0.5) / 8;
}
