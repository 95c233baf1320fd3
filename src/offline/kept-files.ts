/// <reference lib="webworker" />
/**
 * The files that are kept, in one cache, each under its path and the hash of its content. A version of
 * the site is no more than its list of paths and hashes, so that two versions can lie side by side:
 * what did not change is not fetched again, and an update that is cut short has added files that
 * nobody asks for yet. Each file is checked against its hash when it comes, since a server may be
 * half way through an update of its own.
 */
export interface KeptFile {
  readonly path: string;
  readonly hash: string;
}

const cacheName = (scope: string): string => `bowbook ${scope}`;

/** All local caches of an origin are shared, so the scope stands in the name. */
const openCache = (scope: string): Promise<Cache> => caches.open(cacheName(scope));

/** Names of files may hold any sign, so each is written as one in an address. */
const addressOf = (scope: string, path: string): string =>
  scope + path.split('/').map(encodeURIComponent).join('/');

const keyOf = (scope: string, { path, hash }: KeptFile): string =>
  `${addressOf(scope, path)}?kept=${hash}`;

/** Fetches what is missing. Throws where a file cannot be had as it should be. */
export async function keepFiles(scope: string, files: readonly KeptFile[]): Promise<void> {
  const cache = await openCache(scope);
  const there = new Set((await cache.keys()).map(request => request.url));
  const missing = files.filter(file => !there.has(new URL(keyOf(scope, file)).href));
  const waiting = missing.values();
  const fetchNext = async (): Promise<void> => {
    for (const file of waiting)
      await cache.put(keyOf(scope, file), await fetchChecked(scope, file));
  };
  // A few at a time: a phone's connection is shared with the page that is being read.
  await Promise.all(Array.from({ length: 4 }, fetchNext));
}

async function fetchChecked(scope: string, file: KeptFile): Promise<Response> {
  const response = await fetch(addressOf(scope, file.path), { cache: 'no-cache' });
  if (!response.ok) throw new Error(`${file.path}: ${response.status}`);
  const content = await response.arrayBuffer();
  if ((await hashOf(content)) !== file.hash) throw new Error(`${file.path} is of another version`);
  const type = response.headers.get('Content-Type');
  return new Response(content, { headers: type === null ? {} : { 'Content-Type': type } });
}

async function hashOf(content: ArrayBuffer): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', content);
  return [...new Uint8Array(digest)].map(byte => byte.toString(16).padStart(2, '0')).join('');
}

/** Forgets every file but these. */
export async function keepOnly(scope: string, files: readonly KeptFile[]): Promise<void> {
  const cache = await openCache(scope);
  const wanted = new Set(files.map(file => new URL(keyOf(scope, file)).href));
  const idle = (await cache.keys()).filter(request => !wanted.has(request.url));
  await Promise.all(idle.map(request => cache.delete(request)));
}

export async function forgetFiles(scope: string, files: readonly KeptFile[]): Promise<void> {
  const cache = await openCache(scope);
  await Promise.all(files.map(file => cache.delete(keyOf(scope, file))));
}

/** Keeps a mark under a name that is no file of the site. */
export async function keepMark(scope: string, mark: KeptFile): Promise<void> {
  await (await openCache(scope)).put(keyOf(scope, mark), new Response('kept'));
}

export const keptFile = async (scope: string, file: KeptFile): Promise<Response | null> =>
  (await (await openCache(scope)).match(keyOf(scope, file))) ?? null;

/** Whether all of these are kept. */
export async function areKept(scope: string, files: readonly KeptFile[]): Promise<boolean> {
  const found = await Promise.all(files.map(file => keptFile(scope, file)));
  return found.every(response => response !== null);
}
