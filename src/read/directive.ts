import type { Place } from '../../shared/problem.ts';

/** How a directive is written: `:::name` with a body, `::name` on a line, `:name[…]` in text. */
export type BlockForm = 'container' | 'leaf' | 'text';

/** The forms of a directive, by the number of its colons, most first. */
export const blockForms: readonly BlockForm[] = ['container', 'leaf', 'text'];

const signs: Readonly<Record<BlockForm, string>> = { container: ':::', leaf: '::', text: ':' };

/** `:::anchor`, `::plan`, `:stroke`. */
export const blockSign = (form: BlockForm, name: string): string => `${signs[form]}${name}`;

/** A directive of a known name, its attributes checked by name; their values are still text. */
export interface Directive {
  readonly form: BlockForm;
  readonly name: string;
  readonly place: Place;
  /** Verbatim; null without one. */
  readonly label: string | null;
  readonly values: Readonly<Record<string, AttributeValue>>;
}

/** The value of an attribute as written, with its places. */
export interface AttributeValue {
  readonly text: string;
  /** Place of the attribute's name. */
  readonly place: Place;
  /** Place of the first character of the value. */
  readonly valuePlace: Place;
}
