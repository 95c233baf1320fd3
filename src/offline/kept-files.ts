/// <reference lib="webworker" />
/**
 * A file kept on the device. All are in one cache, each under its path and the SHA-256 of its content. A
 * version of the site is a list of paths and hashes, so that two versions can share the cache: unchanged
 * files are not fetched again, and an interrupted update has only added files that no version uses yet.
 * Each file is checked against its hash when fetched, since the server may be in the middle of an
 * update of its own.
 */
export interface KeptFile {
  readonly path: string;
  readonly hash: string;
}

const cacheName = (scope: string): string => `bowbook ${scope}`;

/** Opens the cache of one site: caches are shared by all sites of an origin, so its name has the scope. */
const openCache = (scope: string): Promise<Cache> => caches.open(cacheName(scope));

/** The URL of a file; its name may hold any character, so each step is percent-encoded. */
const addressOf = (scope: string, path: string): string =>
  scope + path.split('/').map(encodeURIComponent).join('/');

const keyOf = (scope: string, { path, hash }: KeptFile): string =>
  `${addressOf(scope, path)}?kept=${hash}`;

/** Fetches the files that are not kept yet, four at a time. Throws where one fails or has another hash. */
export async function keepFiles(scope: string, files: readonly KeptFile[]): Promise<void> {
  const cache = await openCache(scope);
  const there = new Set((await cache.keys()).map(request => request.url));
  const missing = files.filter(file => !there.has(new URL(keyOf(scope, file)).href));
  const waiting = missing.values();
  const fetchNext = async (): Promise<void> => {
    for (const file of waiting)
      await cache.put(keyOf(scope, file), await fetchChecked(scope, file));
  };
  // Few at a time: the page being read shares the phone's connection.
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

/** Removes all other files from the cache. */
export async function keepOnly(scope: string, files: readonly KeptFile[]): Promise<void> {
  const cache = await openCache(scope);
  const wanted = new Set(files.map(file => new URL(keyOf(scope, file)).href));
  const idle = (await cache.keys()).filter(request => !wanted.has(request.url));
  await Promise.all(idle.map(request => cache.delete(request)));
}

/** Removes these files from the cache. */
export async function forgetFiles(scope: string, files: readonly KeptFile[]): Promise<void> {
  const cache = await openCache(scope);
  await Promise.all(files.map(file => cache.delete(keyOf(scope, file))));
}

/** Puts a marker into the cache, under a path that is no file of the site. */
export async function keepMark(scope: string, mark: KeptFile): Promise<void> {
  await (await openCache(scope)).put(keyOf(scope, mark), new Response('kept'));
}

/** The kept file as a response; null where it is not kept. */
export const keptFile = async (scope: string, file: KeptFile): Promise<Response | null> =>
  (await (await openCache(scope)).match(keyOf(scope, file))) ?? null;

/** Whether all of these are kept. */
export async function areKept(scope: string, files: readonly KeptFile[]): Promise<boolean> {
  const found = await Promise.all(files.map(file => keptFile(scope, file)));
  return found.every(response => response !== null);
}
