import type { PlacePhrases } from '../note-places.ts';

export const places: PlacePhrases = {
  inBar: bar => `of ${bar}`,
  inPickup: bar => `of the pickup ${bar}`,
  note: (note, where) => `note ${note} ${where}`,
  notes: (first, last, pair, where) => `notes ${first} ${pair ? 'and' : 'to'} ${last} ${where}`,
  named: (place, names) => `${place} (${names.join(', ')})`,
  across: (first, last) => `${first} to ${last}`,
};
