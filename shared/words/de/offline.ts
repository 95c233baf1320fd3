import type * as english from '../en/offline.ts';
import type { InAnyLanguage } from '../in-any-language.ts';
import { decimal } from './grammar.ts';

/** What a page says of keeping the book on the device. */
export const offlineWords: InAnyLanguage<typeof english.offlineWords> = {
  heading: 'Ohne Netz',
  kept: 'Dieses Buch liegt auf deinem Gerät und öffnet sich ohne Netz.',
  recordings: size => `Auch die Aufnahmen behalten (${size})`,
  recordingsFailed:
    'Nicht alle Aufnahmen ließen sich holen. Versuch es noch einmal, wo der Empfang besser ist.',
  newer: 'In diesem Buch gibt es etwas Neues.',
  show: 'Zeigen',
  decimal,
};
