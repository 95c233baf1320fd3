import { practiceTempo } from '../../shared/bowing/practice-time.ts';
import { mayPublish } from '../../shared/rights.ts';
import type { Words } from '../../shared/words/words-for.ts';
import type { ExportFacts } from '../export/musicxml.ts';
import type { StudiedTune } from './study-job.ts';

/**
 * The gate of rights: whether a tune's notes and sound may leave the teacher's own machine. Every
 * download and every export asks here. A private build, which is never published, shows all.
 */
export const mayLeave = ({ rights }: Pick<StudiedTune, 'rights'>, isPrivate: boolean): boolean =>
  isPrivate || mayPublish(rights);

/** What a file for other programs says of a tune besides its notes. */
export const exportFacts = (studied: StudiedTune, words: Words): ExportFacts => ({
  tempo: practiceTempo(studied.study?.tune ?? { type: null }, studied.request.bowing),
  credits: creditsOf(studied, words),
});

/** Where a tune comes from and whose it is, in one line. */
export const creditsOf = ({ block, study, rights }: StudiedTune, words: Words): string =>
  words.creditLine({
    abc: study?.tune.credits ?? null,
    rights,
    learnedFrom: block.learnedFrom,
    version: block.version,
  });
