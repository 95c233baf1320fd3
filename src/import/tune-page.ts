import type { TuneType } from '../../shared/music/tune.ts';
import { importWords } from '../../shared/words/en/importing.ts';

/** Facts for a page besides the ABC. */
export interface PageFacts {
  readonly id: string;
  readonly title: string;
  /** The type that the teacher states for all tunes; null to take it from `R:`. */
  readonly type: TuneType | null;
  /** The ABC has an `R:` with a known type. */
  readonly hasType: boolean;
  readonly rights: 'traditional' | 'own' | null;
  readonly learnedFrom: string | null;
}

/**
 * The Markdown page of an imported tune: title, type, rights and source, with a comment that asks for
 * each fact that is missing, and the ABC unchanged. The code fence is longer than any run of backticks
 * in it.
 */
export function tunePage(facts: PageFacts, abc: string): string {
  const longest = Math.max(2, ...[...abc.matchAll(/`+/g)].map(m => m[0].length));
  const fence = '`'.repeat(longest + 1);
  return [
    '---',
    `title: ${quoted(facts.title)}`,
    ...(facts.type ? [`type: ${facts.type}`] : facts.hasType ? [] : [`# ${importWords.askType}`]),
    ...(facts.rights ? [] : [`# ${importWords.askRights}`]),
    `rights: ${facts.rights ?? 'unknown'}`,
    facts.learnedFrom === null
      ? `# ${importWords.askLearnedFrom}`
      : `learned-from: ${quoted(facts.learnedFrom)}`,
    '---',
    '',
    `:::tune{#${facts.id}}`,
    `${fence}abc`,
    abc,
    fence,
    ':::',
    '',
  ].join('\n');
}

/** A YAML string: every JSON string is one. */
const quoted = (text: string): string => JSON.stringify(text);

/**
 * Makes ABC safe for a page: a line that begins with three colons would be read as the fence of a
 * directive, so an empty remark (ABC 2.1, section 3.1.13) is put before it.
 */
export const fenceSafe = (abc: string): string => abc.replace(/^[ \t]*:{3}/gm, '[r:]$&');
