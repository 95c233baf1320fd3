/** Exit codes: success, errors in the book, wrong use of the command. */
export const exit = { sound: 0, errors: 1, usage: 2 } as const;
