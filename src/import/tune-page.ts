import type { TuneType } from '../../shared/music/tune.ts';
import { importWords } from '../../shared/words/en/importing.ts';

/** What a page is made from besides the ABC. */
export interface PageFacts {
  readonly id: string;
  readonly title: string;
  /** The type that the teacher says all these tunes are; null to leave it to `R:`. */
  readonly type: TuneType | null;
  /** `R:` names a type we know. */
  readonly hasType: boolean;
  readonly rights: 'traditional' | 'own' | null;
  readonly learnedFrom: string | null;
}

/**
 * The page of an imported tune: its title, a line that asks for its rights, what is asked for
 * besides where the ABC does not say, and the ABC as it was. The fence is longer than any run of
 * backticks in it.
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

/** A string of JSON is one of YAML too. */
const quoted = (text: string): string => JSON.stringify(text);

/**
 * ABC as it may stand in a page: a line of music that begins with three colons would be taken for
 * the fence of a block, so an empty remark (ABC 2.1, section 3.1.13) stands before it.
 */
export const fenceSafe = (abc: string): string => abc.replace(/^[ \t]*:{3}/gm, '[r:]$&');
