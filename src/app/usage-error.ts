/** A command was used wrongly; the message says how to use it. The command ends with 2. */
export class UsageError extends Error {}
