import { templates } from 'bowbook:templates';
import Handlebars from 'handlebars/runtime.js';
import type { Words } from '../../shared/words/words-for.ts';
import { type HeldTexts, held, inPieces } from './text-pieces.ts';

/**
 * The one doorway to Handlebars. Templates are named by their path under `templates/`
 * (`parts/map`), and each may use any other as a partial. Escaping is on and strict: a field that
 * a view lacks is a defect of ours and throws. HTML made elsewhere passes only as `Html`.
 */
export type Html = Handlebars.SafeString;

/** Marks a string as finished HTML. For the body maker, the engraver and `render` alone. */
export const html = (text: string): Html => new Handlebars.SafeString(text);

const engine = Handlebars.create();

/**
 * What is held aside of the page that is being filled in. Not among the data that the engine hands from
 * template to template: V8's collector of young objects kept that, with all the texts, until the next
 * full collection.
 */
let heldTexts: HeldTexts | null = null;

/**
 * For each of a list, with `@first` and `@last`. The engine's own also goes through objects, and makes
 * names for every item that no template here asks for: a page has some thousand items.
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
    return heldTexts === null ? text : held(text, heldTexts);
  },
);

const fills = new Map<string, Handlebars.TemplateDelegate>();
for (const [name, compiled] of Object.entries(templates)) {
  const fill = engine.template(compiled);
  fills.set(name, fill);
  engine.registerPartial(name, fill);
}

/** Fills a template. The site's labels, in the book's language, are at `words` in every view. */
export const render = (template: string, view: object, { siteWords }: Words): string =>
  templateNamed(template)({ words: siteWords, ...view });

/** Fills the template of a whole page, long as it may be. */
export function renderPieces(
  template: string,
  view: object,
  { siteWords }: Words,
): readonly string[] {
  const texts: HeldTexts = [];
  heldTexts = texts;
  try {
    return [...inPieces(templateNamed(template)({ words: siteWords, ...view }), texts)];
  } finally {
    heldTexts = null;
  }
}

function templateNamed(name: string): Handlebars.TemplateDelegate {
  const fill = fills.get(name);
  if (!fill) throw new Error(`there is no template ${name}`);
  return fill;
}
