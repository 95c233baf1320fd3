import type { BowPathPhrases } from '../bow-path.ts';
import { countOne } from './grammar.ts';

const parts = {
  frog: 'at the frog',
  'nearer-frog': 'nearer the frog than the tip',
  middle: 'in the middle',
  'nearer-tip': 'nearer the tip than the frog',
  tip: 'at the tip',
};

export const bowPath: BowPathPhrases = {
  noDrift: 'The bow ends where it began: down-bows and up-bows take the same time.',
  drift: (size, slower) =>
    `The bow drifts ${size} toward the ${slower === 'down' ? 'tip' : 'frog'}: the ${slower}-bows take that much more time than the ${slower === 'down' ? 'up' : 'down'}-bows.`,
  length: countOne,
  aboutQuavers: n => `about ${countOne(n, 'quaver')}`,
  lasts: from => `It lasts if it begins ${parts[from]}.`,
  runsOut: (direction, place, from) =>
    `At one speed it runs out at the ${direction === 'down' ? 'tip' : 'frog'} by ${place}, even if it begins ${parts[from]}: save bow on the ${direction}-bows before that.`,
};
