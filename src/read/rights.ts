import type { Rights } from '../../shared/rights.ts';

/** Words that `rights:` takes. */
export const rightsNames = ['traditional', 'own', 'unknown'] as const;
/** One of `rightsNames`. */
export type RightsName = (typeof rightsNames)[number];

/** Rights as `rights` and `permission` state them; null where neither does, or says `unknown`. */
export function rightsOf(
  name: RightsName | undefined,
  permission: string | undefined,
): Rights | null {
  if (permission !== undefined) return { kind: 'permission', words: permission };
  return name === 'traditional' || name === 'own' ? { kind: name } : null;
}
