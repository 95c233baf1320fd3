import { declareValuePlugin, PluginKind } from '@stryker-mutator/api/plugin';

/** What is thrown says that the program itself is at fault: no tune reaches it, so no test can. */
export const strykerPlugins = [
  declareValuePlugin(PluginKind.Ignore, 'throws', {
    shouldIgnore: path => (path.isThrowStatement() ? 'no tune reaches it' : undefined),
  }),
];
