import type * as english from '../en/offline.ts';
import type { InAnyLanguage } from '../in-any-language.ts';
import { madeOnce } from '../made-once.ts';

const tenths = madeOnce(
  () => new Intl.NumberFormat('de', { minimumFractionDigits: 1, maximumFractionDigits: 1 }),
);

/** What a page says of keeping the book on the device. */
export const offlineWords: InAnyLanguage<typeof english.offlineWords> = {
  heading: 'Ohne Netz',
  kept: 'Dieses Buch liegt auf deinem Gerät und öffnet sich ohne Netz.',
  recordings: size => `Auch die Aufnahmen behalten (${size})`,
  recordingsFailed:
    'Nicht alle Aufnahmen ließen sich holen. Versuch es noch einmal, wo der Empfang besser ist.',
  newer: 'In diesem Buch gibt es etwas Neues.',
  show: 'Zeigen',
  size: bytes =>
    bytes < 1_000_000
      ? `${Math.ceil(bytes / 1000)} KB`
      : `${tenths().format(bytes / 1_000_000)} MB`,
};
