import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { startChromium } from '../browser/chromium.ts';

/**
 * What a lesson weighs and how soon it can be read over a slow network by a slow phone: 400 kbit/s with
 * 400 ms there and back, and a processor four times slower than this one's. The reference is a page
 * of the same text alone, without style, script, type or notation, in the same run.
 */
const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css',
  '.js': 'text/javascript',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
};

const site = mkdtempSync(join(tmpdir(), 'bowbook-view-'));
const args = [
  'dist/cli.js',
  'build',
  'content',
  '--quick',
  '--out',
  site,
  '--cache',
  `${site}-cache`,
];
const built = spawnSync(process.execPath, args, { encoding: 'utf8' });
if (built.status !== 0) throw new Error(built.stderr);

let sent = 0;
/** Scripts of a page's parts are asked for when it stands. */
let sentLater = 0;
const isLater = (path: string): boolean => /\/(?:player|drills|review)\.js$/.test(path);
const server = createServer((request, response) => {
  const path = decodeURIComponent(new URL(request.url ?? '/', 'http://x').pathname);
  try {
    const body = path === '/text.html' ? textAlone() : readFileSync(join(site, path));
    const type = types[extname(path)];
    const zipped = type && extname(path) !== '.woff2' ? gzipSync(body) : body;
    if (isLater(path)) sentLater += zipped.length;
    else sent += zipped.length;
    response.writeHead(200, {
      'Content-Type': type ?? 'application/octet-stream',
      ...(zipped === body ? {} : { 'Content-Encoding': 'gzip' }),
    });
    response.end(zipped);
  } catch {
    response.writeHead(404).end();
  }
});
await new Promise<void>(done => server.listen(0, '127.0.0.1', done));
const address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`;
const lessons = readdirSync(join(site, 'lessons')).filter(name => /^\d/.test(name));
const longest = lessons.sort((a, b) => sizeOf(b) - sizeOf(a))[0] ?? '';

function sizeOf(lesson: string): number {
  return readFileSync(join(site, 'lessons', lesson)).length;
}

function textAlone(): Buffer {
  const html = readFileSync(join(site, 'lessons', longest), 'utf8');
  const text = html.replace(/<(svg|head)[\s\S]*?<\/\1>/g, '').replace(/<[^>]*>/g, ' ');
  return Buffer.from(`<!doctype html><title>Text</title><p>${text}`);
}

interface View {
  /** Sent for the first view, and with what it fetches when it stands. */
  readonly bytes: number;
  readonly all: number;
  /** Milliseconds until the first text stands, and until the page answers. */
  readonly painted: number;
  readonly ready: number;
}

const browser = await startChromium();

async function view(path: string): Promise<View> {
  const context = await browser.newContext({
    viewport: { width: 360, height: 720 },
    serviceWorkers: 'block',
  });
  const page = await context.newPage();
  const cdp = await context.newCDPSession(page);
  await cdp.send('Network.enable');
  await cdp.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: 400,
    downloadThroughput: 50_000,
    uploadThroughput: 50_000,
  });
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  [sent, sentLater] = [0, 0];
  await page.goto(address + path, { waitUntil: 'load' });
  await page.waitForTimeout(3000);
  const [painted, ready] = await page.evaluate(() => {
    const [first] = performance.getEntriesByName('first-contentful-paint');
    const [navigation] = performance.getEntriesByType('navigation');
    return [
      first?.startTime ?? 0,
      (navigation as PerformanceNavigationTiming | undefined)?.domContentLoadedEventEnd ?? 0,
    ] as const;
  });
  await context.close();
  return { bytes: sent, all: sent + sentLater, painted, ready };
}

const median = (views: readonly View[]): View =>
  views.toSorted((a, b) => a.ready - b.ready)[Math.floor(views.length / 2)] as View;

const several = async (path: string): Promise<View> =>
  median([await view(path), await view(path), await view(path)]);

console.log(
  'First view at 400 kbit/s, 400 ms, a processor four times slower; gzipped, three runs:',
);
const text = await several('/text.html');
const told = (name: string, v: View): string =>
  `  ${name}: ${(v.bytes / 1024).toFixed(1)} KB (${(v.all / 1024).toFixed(1)} with what comes later), first text after ${(v.painted / 1000).toFixed(2)} s, answers after ${(v.ready / 1000).toFixed(2)} s (${(v.ready / text.ready).toFixed(2)} of the text alone)`;
console.log(told('the text of the longest lesson alone', text));
for (const path of [
  `/lessons/${longest}`,
  '/index.html',
  '/tunes/index.html',
  '/tunes/the-tide-table.html',
]) {
  console.log(told(path.slice(1), await several(path)));
}
await browser.close();
server.close();
for (const folder of [site, `${site}-cache`]) rmSync(folder, { recursive: true, force: true });
