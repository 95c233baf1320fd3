import type { BowPathPhrases } from '../bow-path.ts';
import { bow } from './grammar.ts';

const parts = {
  frog: 'am Frosch',
  'nearer-frog': 'näher am Frosch als an der Spitze',
  middle: 'in der Mitte',
  'nearer-tip': 'näher an der Spitze als am Frosch',
  tip: 'an der Spitze',
};
const values = { crotchet: 'Viertel', quaver: 'Achtel', semiquaver: 'Sechzehntel' };

export const bowPath: BowPathPhrases = {
  noDrift: 'Der Bogen endet, wo er begonnen hat: Abstriche und Aufstriche dauern gleich lang.',
  drift: (size, slower) =>
    `Der Bogen wandert um ${size} ${slower === 'down' ? 'zur Spitze' : 'zum Frosch'}: So viel länger dauern die ${bow(slower)}e als die ${bow(slower === 'down' ? 'up' : 'down')}e.`,
  length: (n, value) => `${n} ${values[value]}`,
  aboutQuavers: n => `etwa ${n} Achtel`,
  lasts: from => `Er reicht, wenn er ${parts[from]} beginnt.`,
  runsOut: (direction, place, from) =>
    `Bei gleicher Geschwindigkeit ist er ${direction === 'down' ? 'an der Spitze' : 'am Frosch'} bei ${place} zu Ende, selbst wenn er ${parts[from]} beginnt: Spare bei den ${bow(direction)}en davor Bogen.`,
};
