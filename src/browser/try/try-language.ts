import { bowing, edits } from '../../../shared/words/en/bowing.ts';
import { places } from '../../../shared/words/en/places.ts';
import { noPlan } from '../../../shared/words/en/plans.ts';
import { spoken } from '../../../shared/words/en/spoken.ts';
import { trying } from '../../../shared/words/en/try.ts';

/** What the place to try strokes is told with, in the language of the page. */
export const tryLanguage = { bowing, edits, noPlan, places, spoken, trying };
