import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Script } from 'node:vm';
import type * as bundled from '../bundling/bundled.ts';
import { optimiseLate } from './optimise-late.ts';

/** The bundled program, and its script, whose compiled code can be saved. */
export interface LoadedBundle {
  readonly program: typeof bundled;
  readonly script: Script;
}

const folder = fileURLToPath(new URL('.', import.meta.url));
const bundle = join(folder, 'bowbook.cjs');

/** Path of the compiled code of the bundle's functions. */
export const codeFile = join(folder, 'bowbook.code');

/**
 * Loads the bundled program with the code that V8 compiled from its functions in a practice run
 * (`practise.ts`). Compiling them again would take a sixth of a rebuild's processor time in each process
 * (`docs/performance.md`). V8 rejects the code if its version or flags differ, or if the file is missing;
 * the program then runs without it. `Module.enableCompileCache` can replace this once Node 22 is required.
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
