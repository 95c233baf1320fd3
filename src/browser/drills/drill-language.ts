import { edits } from '../../../shared/words/en/bowing.ts';
import { drillTitles, levelSays } from '../../../shared/words/en/drills.ts';
import { map } from '../../../shared/words/en/map.ts';
import { places } from '../../../shared/words/en/places.ts';
import { spoken } from '../../../shared/words/en/spoken.ts';
import { drills } from '../../../shared/words/en/tell-drill.ts';

/** What drills are told with, in the language of the page. */
export const drillLanguage = { drills, drillTitles, edits, levelSays, map, places, spoken };
