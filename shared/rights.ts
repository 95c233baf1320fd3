/** What is known of who owns a tune; null, where nothing is. */
export type Rights =
  | { readonly kind: 'traditional' }
  | { readonly kind: 'own' }
  | { readonly kind: 'permission'; readonly words: string };

/**
 * The one gate: whether the notes of a tune may be published, in any form. Notation, sound,
 * recordings, drills, strokes in sets, downloads and print all ask here, by way of `published` of a
 * built tune or `mayLeave` of a file. Without known rights a tune keeps its title, credits, map and
 * story.
 */
export const mayPublish = (rights: Rights | null): boolean => rights !== null;
