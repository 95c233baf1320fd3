/** What was worked out about things that never change, by the thing itself. */
export interface WorkedOut<K, V> {
  /** Works it out where it is not known yet. */
  readonly of: (thing: K) => V;
  /** All that was asked for. */
  readonly asked: ReadonlyMap<K, V>;
}

/** `known`: what was asked for in the last build, of which this one takes over what it asks for again. */
export function workedOut<K, V>(known: ReadonlyMap<K, V>, work: (thing: K) => V): WorkedOut<K, V> {
  const asked = new Map<K, V>();
  return {
    asked,
    of(thing) {
      const value = asked.get(thing) ?? known.get(thing) ?? work(thing);
      asked.set(thing, value);
      return value;
    },
  };
}
