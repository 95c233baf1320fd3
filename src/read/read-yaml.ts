import {
  isMap,
  isPair,
  isScalar,
  LineCounter,
  type Node,
  type ParsedNode,
  parseDocument,
} from 'yaml';
import type { z } from 'zod';
import { nearest } from '../../shared/nearest.ts';
import { type Place, type Problem, problem } from '../../shared/problem.ts';

/** Text of YAML in a file of the book. `firstLine` is the line on which the text begins, from 1. */
export interface YamlSource {
  readonly file: string;
  readonly text: string;
  readonly firstLine: number;
}

export interface YamlReading<T> {
  /** null where anything was wrong. */
  readonly value: T | null;
  readonly problems: readonly Problem[];
  /** Place of a value that has been read. */
  readonly placeOf: (path: readonly PropertyKey[]) => Place;
}

/**
 * Reads YAML and holds it to a schema. Every fault is placed on its own key or value; an unknown
 * key names the nearest known one.
 */
export function readYaml<T>(source: YamlSource, schema: z.ZodType<T>): YamlReading<T> {
  const lines = new LineCounter();
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
    const rule = broken.code === 'DUPLICATE_KEY' ? 'yaml-repeated' : 'yaml-broken';
    const found = problem(rule, 'error', at(broken.pos[0]), { actual: broken.message });
    return { value: null, problems: [found], placeOf };
  }
  const parsed = schema.safeParse(document.toJS() ?? {});
  if (parsed.success) return { value: parsed.data, problems: [], placeOf };
  const problems = parsed.error.issues.flatMap(issue =>
    issue.code === 'unrecognized_keys'
      ? issue.keys.map(key => {
          const known = keysAt(schema, issue.path);
          const place = at(offsetOf(document.contents, [...issue.path, key], 'key'));
          const facts = { under: issue.path.map(String).join('.') };
          const rest = { actual: key, expected: known, nearest: nearest(key, known), facts };
          return problem('setting-unknown', 'error', place, rest);
        })
      : [badValue(issue, placeOf(issue.path), document.toJS())],
  );
  return { value: null, problems, placeOf };
}

function badValue(issue: z.core.$ZodIssue, place: Place, root: unknown): Problem {
  const found = valueAt(root, issue.path);
  const written =
    found === undefined ? null : typeof found === 'string' ? found : JSON.stringify(found);
  const facts = { setting: issue.path.map(String).join('.') };
  const allowed = issue.code === 'invalid_value' ? issue.values.map(String) : [];
  if (found === undefined || found === null) {
    return problem('setting-missing', 'error', place, { facts });
  }
  const expected = allowed.length > 0 ? allowed : [issue.message];
  const near = written === null ? null : nearest(written, allowed);
  return problem('setting-value', 'error', place, {
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

/** The little that is asked of a schema here. */
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

/** Without `optional`, `nullable` and transforms around it. */
function bare(schema: SchemaShape | undefined): SchemaShape | undefined {
  let at = schema;
  while (at?.def.innerType ?? at?.def.in) at = at?.def.innerType ?? at?.def.in;
  return at;
}
