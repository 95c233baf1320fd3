/** What a teacher said of the new book; null where they said nothing. */
export type Answers = Readonly<Record<string, string | null>>;

/**
 * Fills a template line by line. `{{title}}` becomes the answer, as text of Markdown; `{{yaml title}}`
 * becomes it as a value of YAML. A line that asks for an answer that was not given is left out, and
 * a line that begins with `{{without title}}` stands only then.
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
        return answer(without[1] ?? '') === null ? [line.slice(without[0].length)] : [];
      }
      const asked = [...line.matchAll(/\{\{(?:yaml )?([\w-]+)\}\}/g)].map(m => m[1] ?? '');
      if (asked.some(name => answer(name) === null)) return [];
      return [
        line.replace(/\{\{(yaml )?([\w-]+)\}\}/g, (_, yaml: string | undefined, name: string) => {
          const text = answer(name) ?? '';
          return yaml === undefined ? plainText(text) : JSON.stringify(text);
        }),
      ];
    })
    .join('\n');
}

/** Words as Markdown: signs that it would read are escaped; those inside words and dates are not. */
const plainText = (text: string): string => text.replace(/[\\`*_[\]<>#:{}|~&]/g, '\\$&');
