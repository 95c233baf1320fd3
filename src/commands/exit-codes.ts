/** Exit codes: the book is sound, the book has errors, the command was used wrongly. */
export const exit = { sound: 0, errors: 1, usage: 2 } as const;
