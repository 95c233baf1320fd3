import { slowTempo } from '../../shared/bowing/paces.ts';
import type { Tune } from '../../shared/music/tune.ts';
import { mayPublish } from '../../shared/rights.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { ExportFacts } from '../export/musicxml.ts';
import type { StudiedTune } from './study-job.ts';

/**
 * Whether a file with a tune's notes or sound may be made for others. Every download and every export
 * depends on this function. A private build is never published, so it contains all tunes.
 */
export const mayLeave = ({ rights }: Pick<StudiedTune, 'rights'>, isPrivate: boolean): boolean =>
  isPrivate || mayPublish(rights);

/** The tempo and credits of a tune, for files that other programs read. */
export const exportFacts = (studied: StudiedTune, tune: Tune, words: Words): ExportFacts => ({
  tempo: slowTempo(tune, studied.request.bowing),
  credits: creditsOf(studied, words),
});

/** One line on the origin of a tune and the rights to it, in the language of `words`. */
export const creditsOf = ({ block, study, rights }: StudiedTune, words: Words): string =>
  words.creditLine({
    abc: study?.tune.credits ?? null,
    rights,
    learnedFrom: block.learnedFrom,
    version: block.version,
  });
