/** Wrong use of a command. The message says what is right; the command exits with 2. */
export class UsageError extends Error {}
