/** A file of an example on a page of `docs/rules`, and which of the two books it stands in. */
export interface ExampleFile {
  readonly path: string;
  readonly text: string;
  readonly book: 'wrong' | 'right' | 'both';
  /** Where the problem stands in it, counted from 1; null where it does not. */
  readonly line: number | null;
}

/** A page of `docs/rules`, as the tests read it. */
export interface RulePage {
  readonly title: string;
  readonly rule: string;
  readonly severity: string;
  /** The message quoted, which the wrong example gives. */
  readonly message: string;
  readonly files: readonly ExampleFile[];
  /** Headings, in order. */
  readonly headings: readonly string[];
  /** The file that tests a rule which no example can show. */
  readonly testedBy: string | null;
}

const info = /^(`{3,})\w+ (\S+\.\S+) (wrong|right|both)(?: (\d+))?$/;

/** Reads a page by the convention that `docs/rules/README.md` explains. */
export function readRulePage(text: string): RulePage {
  const files: ExampleFile[] = [];
  const prose: string[] = [];
  const lines = text.split('\n');
  for (let i = 0; i < lines.length; i++) {
    const opened = info.exec(lines[i] ?? '');
    if (!opened) {
      prose.push(lines[i] ?? '');
      continue;
    }
    const [, fence = '', path = '', book, line] = opened;
    const end = lines.indexOf(fence, i + 1);
    if (end < 0) throw new Error(`the example ${path} is not closed`);
    files.push({
      path,
      text: lines
        .slice(i + 1, end)
        .map(l => `${l}\n`)
        .join(''),
      book: book as ExampleFile['book'],
      line: line === undefined ? null : Number(line),
    });
    i = end;
  }
  const find = (pattern: RegExp): string => pattern.exec(prose.join('\n'))?.[1] ?? '';
  const [, rule = '', severity = ''] = /^`([a-z-]+)`, (\w+)$/m.exec(prose.join('\n')) ?? [];
  return {
    title: find(/^# (.+)$/m),
    rule,
    severity,
    message: find(/^> (.+)$/m),
    files,
    headings: prose.flatMap(l => /^## (.+)$/.exec(l)?.[1] ?? []),
    testedBy: find(/^Tested by `(.+)`\.$/m) || null,
  };
}
