import type * as english from '../en/try-link.ts';
import type { InAnyLanguage } from '../in-any-language.ts';

/** What a link to somebody’s slurs says where it cannot be followed. */
export const linkFaults: InAnyLanguage<typeof english.linkFaults> = {
  broken:
    'Der Verweis ist nicht vollständig, darum stehen die Bindebögen, wie die Lehrkraft sie schrieb.',
  'later-version':
    'Der Verweis stammt aus einer späteren Fassung dieses Buchs, darum stehen die Bindebögen, wie die Lehrkraft sie schrieb.',
  'other-notes':
    'Der Verweis wurde für andere Noten gemacht, als jetzt hier stehen, darum stehen die Bindebögen, wie die Lehrkraft sie schrieb.',
  'no-passage': 'Der Verweis nennt eine Stelle, die nicht auf dieser Seite ist.',
};

export const tryWaits: InAnyLanguage<typeof english.tryWaits> = {
  wait: 'Die Noten werden geholt …',
  failed:
    'Die Noten ließen sich nicht holen. Klapp dies zu und wieder auf, um es noch einmal zu versuchen.',
};
