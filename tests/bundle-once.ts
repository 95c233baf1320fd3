import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

/**
 * Bundles the command and the pages' scripts before any test: many run the command itself or open
 * pages, and a bundle made while another test reads it would be half of one and half of the other.
 * Gives the test files of the run a folder to share.
 */
export default function bundleOnce(project: TestProject): () => void {
  execFileSync(process.execPath, ['src/bundling/bundle.mjs'], {
    cwd: join(import.meta.dirname, '..'),
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const folder = mkdtempSync(join(tmpdir(), 'bowbook-tests-'));
  project.provide('sharedFolder', folder);
  return () => rmSync(folder, { recursive: true, force: true });
}
