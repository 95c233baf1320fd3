/** The templates, compiled by `src/bundling/templates-plugin.mjs`, by their paths under `templates/`. */
declare module 'bowbook:templates' {
  export const templates: Readonly<Record<string, TemplateSpecification>>;
}

/** The part of Handlebars that fills compiled templates; it comes without types of its own. */
declare module 'handlebars/runtime.js' {
  import Handlebars from 'handlebars';
  export default Handlebars;
}
