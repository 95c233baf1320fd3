/** A note by its name in the study: `B5:3` is "note 3 of B5", a bar alone stays as it is. */
export function noteNamed(id: string | number | undefined): string {
  const [bar = '', note] = `${id ?? ''}`.split(':');
  return note === undefined ? bar : `note ${note} of ${bar}`;
}
