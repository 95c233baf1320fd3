/** A title as an index sorts it: a leading article left out. */
export function sortedAs({ articles }: { readonly articles: string }, title: string): string {
  const [first = '', ...rest] = title.split(/\s+/);
  return rest.length > 0 && articles.split(' ').includes(first.toLowerCase())
    ? title.slice(first.length).trimStart()
    : title;
}
