/** All that a reader of a book in German sees of Bowbook’s own words; see the English file of this name. */

export { bowPath } from './bow-path.ts';
export { bowing, edits } from './bowing.ts';
export { byEarWords } from './by-ear.ts';
export { credits } from './credits.ts';
export { drillTitles, drillWords, levelSays, mendVerdicts, noDrill } from './drills.ts';
export { marks } from './how-to-read.ts';
export { keys } from './keys.ts';
export { map } from './map.ts';
export { offlineWords } from './offline.ts';
export { places } from './places.ts';
export { noPlan, plans } from './plans.ts';
export { beats, playerWords } from './player.ts';
export { printWords } from './print.ts';
export { reviewWords } from './review.ts';
export { searchWords } from './search.ts';
export { durations, setWords } from './sets.ts';
export { articles, siteWords, typeName } from './site.ts';
export { spoken } from './spoken.ts';
export { standouts } from './standouts.ts';
export { drills } from './tell-drill.ts';
export { trying, tryWords } from './try.ts';
export { linkFaults, tryWaits } from './try-link.ts';
