import {
  type Document,
  isMap,
  isPair,
  isScalar,
  LineCounter,
  type Node,
  type ParsedNode,
  parseDocument,
  visit,
} from 'yaml';
import type * as z from 'zod';
import { limits } from '../../shared/limits.ts';
import { nearest } from '../../shared/nearest.ts';
import { type Place, type Problem, problem } from '../../shared/problem.ts';
import { meantName } from './renamed.ts';

/** Text of YAML in a file of the book. `firstLine` is the line on which the text begins, from 1. */
export interface YamlSource {
  readonly file: string;
  readonly text: string;
  readonly firstLine: number;
}

/** A value read from YAML and checked, or what is wrong with it. */
export interface YamlReading<T> {
  /** null where anything was wrong. */
  readonly value: T | null;
  readonly problems: readonly Problem[];
  /** Place of a value that has been read. */
  readonly placeOf: (path: readonly PropertyKey[]) => Place;
}

/**
 * Reads YAML and checks it against a schema. Each problem has the place of its key or value; an unknown key
 * comes with the nearest known one.
 */
export function readYaml<T>(source: YamlSource, schema: z.ZodType<T>): YamlReading<T> {
  const lines = new LineCounter();
  const deep = tooDeep(source);
  if (deep) return { value: null, problems: [deep], placeOf: () => deep.place };
  const document = parseDocument(source.text, {
    lineCounter: lines,
    prettyErrors: false,
    logLevel: 'error',
  });
  const at = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { file: source.file, line: line + source.firstLine - 1, column: col };
  };
  const placeOf = (path: readonly PropertyKey[]): Place =>
    at(offsetOf(document.contents, path, 'value'));
  const broken = document.errors[0] ?? document.warnings[0];
  if (broken) {
    const isRepeated = broken.code === 'DUPLICATE_KEY';
    const rule = isRepeated ? 'yaml-repeated' : 'yaml-broken';
    const [key = ''] = /^[^:\s]*/.exec(source.text.slice(broken.pos[0])) ?? [];
    const actual = isRepeated ? key : broken.message;
    const found = problem(rule, at(broken.pos[0]), { actual });
    return { value: null, problems: [found], placeOf };
  }
  const plain = plainValue(document);
  if ('fault' in plain) {
    const found = problem('yaml-broken', at(plain.offset), { actual: plain.fault });
    return { value: null, problems: [found], placeOf };
  }
  const parsed = schema.safeParse(plain.value ?? {});
  if (parsed.success) return { value: parsed.data, problems: [], placeOf };
  const problems = parsed.error.issues.flatMap(issue =>
    issue.code === 'unrecognized_keys'
      ? issue.keys.map(key => {
          const known = keysAt(schema, issue.path);
          const place = at(offsetOf(document.contents, [...issue.path, key], 'key'));
          const facts = { under: issue.path.map(String).join('.') };
          const rest = { actual: key, expected: known, nearest: meantName(key, known), facts };
          return problem('setting-unknown', place, rest);
        })
      : [badValue(issue, placeOf(issue.path), plain.value)],
  );
  return { value: null, problems, placeOf };
}

/** The problem of brackets or indents so deep that the parser would run out of stack; null where there is none. */
function tooDeep({ file, text, firstLine }: YamlSource): (Problem & { place: Place }) | null {
  let open = 0;
  for (const [i, line] of text.split('\n').entries()) {
    for (const sign of line.match(/[[\]{}]/g) ?? []) {
      open = Math.max(0, open + (sign === '[' || sign === '{' ? 1 : -1));
      if (open > limits.nesting) break;
    }
    const marks = (/^(?:\s*[-?:](?=\s))+/.exec(line)?.[0].match(/[-?:]/g) ?? []).length;
    if (open + marks + leading(line) / 2 <= limits.nesting) continue;
    const place = { file, line: firstLine + i, column: 1 };
    const facts = { most: limits.nesting };
    return { ...problem('nested-past-limit', place, { facts }), place };
  }
  return null;
}

const leading = (line: string): number => line.length - line.trimStart().length;

/**
 * The document as plain values. The library throws here, and not before, for an alias without an anchor
 * and for aliases that would expand without end.
 */
function plainValue(
  document: Document.Parsed,
): { readonly value: unknown } | { readonly fault: string; readonly offset: number } {
  try {
    return { value: document.toJS() };
  } catch (error) {
    let offset = document.contents?.range?.[0] ?? 0;
    visit(document, {
      Alias(_, alias) {
        if (alias.resolve(document) !== undefined) return undefined;
        offset = alias.range?.[0] ?? offset;
        return visit.BREAK;
      },
    });
    return { fault: error instanceof Error ? error.message : String(error), offset };
  }
}

function badValue(issue: z.core.$ZodIssue, place: Place, root: unknown): Problem {
  const found = valueAt(root, issue.path);
  const written =
    found === undefined ? null : typeof found === 'string' ? found : JSON.stringify(found);
  const facts = { setting: issue.path.map(String).join('.') };
  const allowed = issue.code === 'invalid_value' ? issue.values.map(String) : [];
  if (found === undefined || found === null) {
    return problem('setting-missing', place, { facts });
  }
  const expected = allowed.length > 0 ? allowed : [issue.message];
  const near = written === null ? null : nearest(written, allowed);
  return problem('setting-value', place, {
    facts,
    actual: written,
    expected,
    nearest: near,
  });
}

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  let value = root;
  for (const key of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

/** Where the value, or the key, of a path begins; where a step is missing, the last one found. */
function offsetOf(
  root: ParsedNode | null,
  path: readonly PropertyKey[],
  part: 'key' | 'value',
): number {
  let node: Node | null = root;
  let offset = root?.range?.[0] ?? 0;
  for (const [depth, key] of path.entries()) {
    let next: Node | null = null;
    let keyNode: Node | null = null;
    if (isMap(node)) {
      const pair = node.items.find(
        item => isPair(item) && isScalar(item.key) && String(item.key.value) === String(key),
      );
      keyNode = (pair?.key as Node | undefined) ?? null;
      next = (pair?.value as Node | undefined) ?? null;
    } else if (node !== null && 'items' in node) {
      next = ((node.items as unknown[])[Number(key)] as Node | undefined) ?? null;
    }
    const wantsKey = part === 'key' && depth === path.length - 1;
    const found = wantsKey ? keyNode : (next ?? keyNode);
    if (!found?.range) return offset;
    offset = found.range[0];
    node = next;
  }
  return offset;
}

/** Keys that a schema knows at a path. */
function keysAt(schema: z.ZodType, path: readonly PropertyKey[]): readonly string[] {
  let at: SchemaShape | undefined = bare(schema as unknown as SchemaShape);
  for (const key of path)
    at = bare(at?.def.shape?.[String(key)] ?? at?.def.valueType ?? at?.def.element);
  return Object.keys(at?.def.shape ?? at?.def.keyType?.def.entries ?? {});
}

/** The part of a schema's interface that is used here. */
interface SchemaShape {
  readonly def: {
    readonly shape?: Readonly<Record<string, SchemaShape>>;
    readonly keyType?: { readonly def: { readonly entries?: Readonly<Record<string, string>> } };
    readonly valueType?: SchemaShape;
    readonly element?: SchemaShape;
    readonly innerType?: SchemaShape;
    readonly in?: SchemaShape;
  };
}

/** The schema inside `optional`, `nullable` and transforms. */
function bare(schema: SchemaShape | undefined): SchemaShape | undefined {
  let at = schema;
  while (at?.def.innerType ?? at?.def.in) at = at?.def.innerType ?? at?.def.in;
  return at;
}
