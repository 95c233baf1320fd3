import { got } from '../../shared/must.ts';

/** The teacher's answers by name; null where a question was not answered. */
export type Answers = Readonly<Record<string, string | null>>;

/**
 * Fills a template line by line. `{{title}}` becomes the answer as Markdown text, `{{yaml title}}` as a
 * YAML string. A line with an answer that is null is left out; a line that begins with
 * `{{without title}}` is included only where that answer is null. Throws for an unknown name.
 */
export function fillTemplate(template: string, answers: Answers): string {
  const answer = (name: string): string | null => {
    const found = answers[name];
    if (found === undefined) throw new Error(`a template asks for ${name}`);
    return found;
  };
  return template
    .split('\n')
    .flatMap(line => {
      const without = /^\{\{without ([\w-]+)\}\}/.exec(line);
      if (without) {
        return answer(got(without[1], 'name')) === null ? [line.slice(without[0].length)] : [];
      }
      const asked = [...line.matchAll(/\{\{(?:yaml )?([\w-]+)\}\}/g)].map(m => got(m[1], 'name'));
      if (asked.some(name => answer(name) === null)) return [];
      return [
        line.replace(/\{\{(yaml )?([\w-]+)\}\}/g, (_, yaml: string | undefined, name: string) => {
          const text = got(answer(name), name);
          return yaml === undefined ? plainText(text) : JSON.stringify(text);
        }),
      ];
    })
    .join('\n');
}

/** Escapes the characters that have a meaning in Markdown. */
const plainText = (text: string): string => text.replace(/[\\`*_[\]<>#:{}|~&]/g, '\\$&');
