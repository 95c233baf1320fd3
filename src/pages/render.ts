import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import Handlebars from 'handlebars';
import type { Words } from '../../shared/words/words-for.ts';
import { packageRoot } from './package-root.ts';
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
    return data.texts === undefined ? text : held(text, data.texts);
  },
);

const compiled = new Map<string, Handlebars.TemplateDelegate>();

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
  const filled = templateNamed(template)({ words: siteWords, ...view }, { data: { texts } });
  return [...inPieces(filled, texts)];
}

function templateNamed(name: string): Handlebars.TemplateDelegate {
  if (compiled.size === 0) loadTemplates();
  const fill = compiled.get(name);
  if (!fill) throw new Error(`there is no template ${name}`);
  return fill;
}

/**
 * Takes out where in its file each node of a template stands. Handlebars would compile it in, as an
 * object to be made anew each time that a field is filled in. A defect of a view names its field alone.
 */
class WithoutPlaces extends Handlebars.Visitor {
  override accept(node: hbs.AST.Node): void {
    if (node?.loc) Object.assign(node.loc, { toJSON: () => null });
    super.accept(node);
  }
}

Object.assign(engine, {
  parse(...source: Parameters<typeof Handlebars.parse>): hbs.AST.Program {
    const template = Handlebars.parse(...source);
    new WithoutPlaces().accept(template);
    return template;
  },
});

function loadTemplates(): void {
  const root = join(packageRoot(), 'templates');
  for (const entry of readdirSync(root, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile() || !entry.name.endsWith('.hbs')) continue;
    const file = join(entry.parentPath, entry.name);
    const name = relative(root, file).split(sep).join('/').slice(0, -'.hbs'.length);
    // Not parsed or compiled before it is first filled in.
    const fill = engine.compile(readFileSync(file, 'utf8'), {
      strict: true,
      knownHelpersOnly: true,
    });
    compiled.set(name, fill);
    engine.registerPartial(name, fill);
  }
}
