// Plugins for esbuild, which bundles the program, and Vite, which runs it unbundled in tests: they compile
// the templates into a module, `bowbook:templates`. A template's name is its path under `templates/`
// (`parts/map`).
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import Handlebars from 'handlebars';

const root = join(import.meta.dirname, '../../templates');
const name = 'bowbook:templates';

/**
 * Removes the source position of each node of a template. Handlebars would compile it in, as an object
 * that is made again each time a field is filled in. So an error for a missing field names only the field.
 */
class WithoutPlaces extends Handlebars.Visitor {
  accept(node) {
    if (node?.loc) Object.assign(node.loc, { toJSON: () => null });
    super.accept(node);
  }
}

const compiler = Object.assign(Handlebars.create(), {
  parse(...source) {
    const template = Handlebars.parse(...source);
    new WithoutPlaces().accept(template);
    return template;
  },
});

/** The text of the module. `strict`: rendering throws where a view lacks a field of the template. */
function compiledTemplates() {
  const compiled = readdirSync(root, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile() && entry.name.endsWith('.hbs'))
    .map(entry => join(entry.parentPath, entry.name))
    .toSorted()
    .map(file => {
      const template = relative(root, file).split(sep).join('/').slice(0, -'.hbs'.length);
      const options = { strict: true, knownHelpersOnly: true };
      const code = compiler.precompile(readFileSync(file, 'utf8'), options);
      return `${JSON.stringify(template)}: ${code}`;
    });
  return `export const templates = {\n${compiled.join(',\n')}\n};\n`;
}

export const templatesForEsbuild = {
  name,
  setup({ onResolve, onLoad }) {
    onResolve({ filter: /^bowbook:templates$/ }, () => ({ path: name, namespace: 'bowbook' }));
    onLoad({ filter: /./, namespace: 'bowbook' }, () => ({ contents: compiledTemplates() }));
  },
};

export const templatesForVite = {
  name,
  resolveId: source => (source === name ? `\0${name}` : undefined),
  load: id => (id === `\0${name}` ? compiledTemplates() : undefined),
};
