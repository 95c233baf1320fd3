/** What a student has set before, kept on their own device alone. */
export type Kept = Readonly<Record<string, string | number | boolean>>;

// All local folders share one store, so the key has the program's name before it.
const key = 'bowbook.player';

export function readKept(): Kept {
  try {
    const read: unknown = JSON.parse(localStorage.getItem(key) ?? '{}');
    return typeof read === 'object' && read !== null ? (read as Kept) : {};
  } catch {
    return {}; // no store here, or not ours: the player starts as it was written
  }
}

export function keep(changes: Kept): void {
  try {
    localStorage.setItem(key, JSON.stringify({ ...readKept(), ...changes }));
  } catch {
    // Storing is refused: the choice lasts as long as the page.
  }
}
