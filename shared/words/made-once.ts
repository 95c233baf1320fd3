/** Makes a thing when it is first asked for: what a language needs is not made for readers of another. */
export function madeOnce<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}
