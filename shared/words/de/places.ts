import type { PlacePhrases } from '../note-places.ts';

export const places: PlacePhrases = {
  inBar: bar => `in ${bar}`,
  inPickup: bar => `im Auftakt ${bar}`,
  note: (note, where) => `Note ${note} ${where}`,
  notes: (first, last, pair, where) => `Note ${first} ${pair ? 'und' : 'bis'} ${last} ${where}`,
  named: (place, names) => `${place} (${names.join(', ')})`,
  across: (first, last) => `${first} bis ${last}`,
};
