/**
 * The shape of words, whatever the language: each text may be any text, lists keep their lengths,
 * and functions what they take and give. A language held to this shape lacks no word of another.
 */
export type InAnyLanguage<T> = T extends string
  ? string
  : T extends (...given: never[]) => unknown
    ? T
    : T extends object
      ? { readonly [Name in keyof T]: InAnyLanguage<T[Name]> }
      : T;
