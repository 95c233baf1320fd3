import type { ContainerDirective, LeafDirective, TextDirective } from 'mdast-util-directive';
import { at } from '../../shared/must.ts';
import { nearest } from '../../shared/nearest.ts';
import { type Place, type Problem, problem } from '../../shared/problem.ts';
import { type WrittenAttribute, writtenAttributes, writtenLabel } from './attributes.ts';
import type { BlockBase, BlockSpec } from './blocks/block-spec.ts';
import { allBlockSigns, blockNames, specNamed } from './blocks/block-specs.ts';
import {
  type AttributeValue,
  type BlockForm,
  blockForms,
  blockSign,
  type Directive,
} from './directive.ts';
import { meantName } from './renamed.ts';
import { placeAt, positionOf, type SourceText, writtenText } from './source-text.ts';

/** A directive of any form in the Markdown tree. */
export type DirectiveNode = ContainerDirective | LeafDirective | TextDirective;

/** A directive with its attributes, and what is wrong with it. */
export interface DirectiveReading {
  /** null where its name is unknown, which is a problem. */
  readonly directive: Directive | null;
  readonly problems: readonly Problem[];
}

const forms = {
  containerDirective: 'container',
  leafDirective: 'leaf',
  textDirective: 'text',
} as const;

/** Checks a directive's name, label and attributes against the spec of its block. */
export function readDirective(node: DirectiveNode, source: SourceText): DirectiveReading {
  const form = forms[node.type];
  const { start } = positionOf(node);
  const place = placeAt(source.file, start.line, start.column);
  const spec = specNamed(form, node.name);
  if (!spec) return { directive: null, problems: [unknownBlock(form, node.name, place)] };

  const opening = openingOf(node, source);
  const label = writtenLabel(opening);
  const written = writtenAttributes(opening);
  const placeOf = (offset: number): Place => placeIn(opening, offset, place);
  const values: Record<string, AttributeValue> = {};
  for (const { name, value, offset, valueOffset } of written) {
    const text = decoded(node, name, value);
    values[name] = { text, place: placeOf(offset), valuePlace: placeOf(valueOffset) };
  }
  const sign = blockSign(form, node.name);
  return {
    directive: { form, name: node.name, place, label, values },
    problems: [
      ...labelProblems(sign, spec, label, place),
      ...nameProblems(sign, spec, written, placeOf),
      ...spec.required
        .filter(name => values[name] === undefined)
        .map(name => problem('attribute-missing', place, { facts: { block: sign, name } })),
    ],
  };
}

function unknownBlock(form: BlockForm, name: string, place: Place): Problem {
  const found = blockSign(form, name);
  const sameForm = nearest(name, blockNames(form));
  const otherForm = blockForms.find(f => specNamed(f, name));
  const near = otherForm
    ? blockSign(otherForm, name)
    : sameForm
      ? blockSign(form, sameForm)
      : nearest(found, allBlockSigns);
  return problem('block-unknown', place, {
    actual: found,
    expected: allBlockSigns,
    nearest: near,
  });
}

/** The line, or for a text directive the whole, in which name, label and attributes stand. */
function openingOf(node: DirectiveNode, source: SourceText): string {
  const whole = writtenText(node, source);
  return node.type === 'textDirective' ? whole : at(whole.split('\n', 1), 0);
}

/**
 * Value of an attribute with its character references decoded, as remark has it. `writtenAttributes` keeps
 * order and repeats, but decodes nothing.
 */
function decoded(node: DirectiveNode, name: string, value: string | null): string {
  return value?.includes('&') ? (node.attributes?.[name] ?? value) : (value ?? '');
}

function placeIn(opening: string, offset: number, start: Place): Place {
  const before = opening.slice(0, offset).split('\n');
  const last = at(before, before.length - 1).length;
  return before.length === 1
    ? placeAt(start.file, start.line, start.column + last)
    : placeAt(start.file, start.line + before.length - 1, last + 1);
}

function labelProblems(
  sign: string,
  spec: BlockSpec<BlockBase>,
  label: string | null,
  place: Place,
): readonly Problem[] {
  if (spec.label && !label?.trim()) {
    return [problem('label-missing', place, { facts: { block: sign } })];
  }
  if (!spec.label && label !== null) {
    return [problem('label-unwanted', place, { facts: { block: sign }, actual: label })];
  }
  return [];
}

function nameProblems(
  sign: string,
  spec: BlockSpec<BlockBase>,
  written: readonly WrittenAttribute[],
  at: (offset: number) => Place,
): readonly Problem[] {
  const seen = new Set<string>();
  const problems: Problem[] = [];
  for (const { name, value, offset } of written) {
    const facts = { block: sign, name };
    if (!spec.attributes.includes(name)) {
      problems.push(
        problem('attribute-unknown', at(offset), {
          facts,
          actual: name,
          expected: spec.attributes,
          nearest: meantName(name, spec.attributes),
        }),
      );
    } else if (seen.has(name)) {
      problems.push(problem('attribute-repeated', at(offset), { facts, actual: name }));
    } else if (value === null ? !spec.flags?.includes(name) : value.trim() === '') {
      problems.push(problem('attribute-empty', at(offset), { facts, actual: name }));
    }
    seen.add(name);
  }
  return problems;
}
