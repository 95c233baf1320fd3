/** The rights to a tune. Unknown rights are null. */
export type Rights =
  | { readonly kind: 'traditional' }
  | { readonly kind: 'own' }
  | { readonly kind: 'permission'; readonly words: string };

/**
 * Whether the notes of a tune may be published in any form. Notation, sound, recordings, drills, strokes
 * in sets, downloads and print all depend on this function, through `published` of a built tune or
 * `mayLeave` of a file. Without known rights only title, credits, map and story are published.
 */
export const mayPublish = (rights: Rights | null): boolean => rights !== null;
