import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Script } from 'node:vm';
import type * as bundled from '../bundling/bundled.ts';
import { optimiseLate } from './optimise-late.ts';

/** The bundled program, and its script, of which the compiled code can be asked. */
export interface LoadedBundle {
  readonly program: typeof bundled;
  readonly script: Script;
}

const folder = fileURLToPath(new URL('.', import.meta.url));
const bundle = join(folder, 'bowbook.cjs');

/** Where what the bundle's functions compile to is kept. */
export const codeFile = join(folder, 'bowbook.code');

/**
 * Loads the bundled program together with what a practice run compiled its functions to, so that
 * neither it nor any thread that it starts has to compile them again: that takes a sixth of a rebuild's processor time
 * (`docs/performance.md`).
 * Code that another V8 compiled, or the same under other flags, is refused by V8, and the program
 * runs as well without. `Module.enableCompileCache` will do this where Node 22 is the least.
 */
export function loadBundle(): LoadedBundle {
  optimiseLate();
  const source = readFileSync(bundle, 'utf8');
  const script = new Script(`(function (module, require, bundleUrl) {${source}\n})`, {
    filename: bundle,
    ...compiledCode(),
  });
  const module = { exports: {} };
  script.runInThisContext()(module, createRequire(bundle), pathToFileURL(bundle).href);
  return { program: module.exports as typeof bundled, script };
}

function compiledCode(): { readonly cachedData?: Buffer } {
  try {
    return { cachedData: readFileSync(codeFile) };
  } catch {
    return {}; // not made yet
  }
}
