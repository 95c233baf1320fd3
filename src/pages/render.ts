import { templates } from 'bowbook:templates';
import Handlebars from 'handlebars/runtime.js';
import type { Words } from '../../shared/words/words-for.ts';

/**
 * Renders templates; no other file calls Handlebars. Templates are named by their path under `templates/`
 * (`parts/map`), and each may use any other as a partial. Escaping is on and strict: a field that
 * a view lacks is a defect of ours and throws. HTML made elsewhere passes only as `Html`.
 */
export type Html = Handlebars.SafeString;

/** Marks a string as finished HTML. The string must come from a template, the engraver or the writer of bodies. */
export const html = (text: string): Html => new Handlebars.SafeString(text);

const engine = Handlebars.create();

/**
 * `{{#each}}` over a list, with `@first` and `@last`. The helper of Handlebars also handles objects and sets
 * `@key` and `@index` for every item, which no template here reads: a page has about a thousand items.
 */
engine.registerHelper(
  'each',
  (list: readonly unknown[], { data, fn }: Handlebars.HelperOptions) => {
    const frame = Handlebars.createFrame(data);
    const options = { data: frame };
    let text = '';
    for (let i = 0; i < list.length; i++) {
      frame.first = i === 0;
      frame.last = i === list.length - 1;
      text += fn(list[i], options);
    }
    return text;
  },
);

const fills = new Map<string, Handlebars.TemplateDelegate>();
for (const [name, compiled] of Object.entries(templates)) {
  const fill = engine.template(compiled);
  fills.set(name, fill);
  engine.registerPartial(name, fill);
}

/**
 * Fills a template. Every view has the labels of the site at `words`, in the book's language. Throws where
 * there is no such template, and where the view lacks a field.
 */
export function render(template: string, view: object, { siteWords }: Words): string {
  const fill = fills.get(template);
  if (!fill) throw new Error(`there is no template ${template}`);
  return fill({ words: siteWords, ...view });
}
