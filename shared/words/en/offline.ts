import { decimal } from './grammar.ts';

/** What a page says of keeping the book on the device. */
export const offlineWords = {
  heading: 'Without a network',
  kept: 'This book is kept on your device and opens without a network.',
  recordings: (size: string): string => `Keep the recordings too (${size})`,
  recordingsFailed:
    'The recordings could not all be fetched. Try again where the signal is better.',
  newer: 'There is something new in this book.',
  show: 'Show it',
  decimal,
} as const;
