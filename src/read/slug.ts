/**
 * The name of a title in links and file names: lower case, letters and digits of any script, and
 * hyphens. Apostrophes are dropped: `The Miller's Gate` is `the-millers-gate`. Empty where the title
 * has no letter or digit.
 */
export function slug(title: string): string {
  return title
    .normalize('NFKD')
    .replace(/\p{M}+/gu, '')
    .toLowerCase()
    .replace(/['’ʼ]/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
}
