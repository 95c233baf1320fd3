import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';

/** The first is Chromium without windows: pages open in half the time. */
const places = [
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
];

/**
 * A Chromium to test in: the one `BOWBOOK_CHROMIUM` names, else one in the usual places, else
 * Debian's, installed here where that may be done. Throws with the way out where there is none.
 */
export function findChromium(): string {
  const named = process.env.BOWBOOK_CHROMIUM;
  if (named !== undefined) {
    if (existsSync(named)) return named;
    throw new Error(`BOWBOOK_CHROMIUM names "${named}", and there is no such file.`);
  }
  waitForInstall();
  const found = places.find(p => existsSync(p));
  if (found !== undefined) return found;
  if (process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')) {
    install();
    const installed = places.find(p => existsSync(p));
    if (installed !== undefined) return installed;
  }
  throw new Error(
    'The browser tests need Chromium. Install it (on Debian: apt-get install chromium), or name one in BOWBOOK_CHROMIUM.',
  );
}

/** Stands while one of the processes that the tests run in installs: the package system takes one at a time. */
const installing = join(tmpdir(), 'bowbook-tests-install-chromium');

function install(): void {
  try {
    mkdirSync(installing);
  } catch {
    waitForInstall();
    return;
  }
  try {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    execFileSync('apt-get', ['update', '-qq'], { env, stdio: 'inherit' });
    const get = (name: string): unknown =>
      execFileSync('apt-get', ['install', '-y', '-qq', name], { env, stdio: 'inherit' });
    try {
      get('chromium-headless-shell');
    } catch {
      get('chromium'); // a Debian that has not made two packages of it yet
    }
  } finally {
    rmSync(installing, { recursive: true, force: true });
  }
}

/** A browser that is half unpacked has its file already. Whoever takes longer than this was killed. */
function waitForInstall(): void {
  const asleep = new Int32Array(new SharedArrayBuffer(4));
  for (let left = 300; left > 0 && existsSync(installing); left--) Atomics.wait(asleep, 0, 0, 500);
  rmSync(installing, { recursive: true, force: true });
}

/** Starts it headless, asking nothing of the network by itself, with type set as on a screen. */
export function startChromium(): Promise<Browser> {
  return chromium.launch({
    executablePath: findChromium(),
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
      '--font-render-hinting=none',
    ],
  });
}
