/// <reference lib="webworker" />
import type { KeepingOrder, KeepingState, KeptSite } from '../../shared/kept-site.ts';
import {
  areKept,
  forgetFiles,
  type KeptFile,
  keepFiles,
  keepMark,
  keepOnly,
  keptFile,
} from './kept-files.ts';
import { partOf } from './part-of.ts';

/**
 * The service worker: after one visit over http it keeps the whole site on the device and answers from
 * its cache, so that a reader never sees pages of two versions together. A new version is fetched
 * beside the old one; it takes over when the reader agrees, or when no page of the old one is open.
 *
 * The build writes the list of files (`keptSite`) before this script.
 */
declare const self: ServiceWorkerGlobalScope;
declare const keptSite: KeptSite;

const scope = self.registration.scope;
const listed = (files: Readonly<Record<string, string>>): readonly KeptFile[] =>
  Object.entries(files).map(([path, hash]) => ({ path, hash }));
const files = listed(keptSite.files);
const recordings = listed(keptSite.recordings);
/** A marker in the cache, no file of the site: the student wants recordings kept. */
const recordingsWanted: KeptFile = { path: 'recordings-wanted', hash: '1' };

self.addEventListener('install', event => event.waitUntil(install()));
self.addEventListener('activate', event => event.waitUntil(activate()));
self.addEventListener('message', event => event.waitUntil(obey(event)));
self.addEventListener('fetch', event => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(scope)) return;
  event.respondWith(answer(request));
});

async function install(): Promise<void> {
  await keepFiles(scope, files);
  if (await keptFile(scope, recordingsWanted)) await keepFiles(scope, recordings);
}

async function activate(): Promise<void> {
  await install(); // fetches only what the browser has evicted since
  const wanted = (await keptFile(scope, recordingsWanted)) !== null;
  await keepOnly(scope, [...files, ...(wanted ? [recordingsWanted, ...recordings] : [])]);
  await self.clients.claim();
}

async function answer(request: Request): Promise<Response> {
  const path = pathOf(request.url);
  const hash = keptSite.files[path] ?? keptSite.recordings[path];
  const kept = hash === undefined ? null : await keptFile(scope, { path, hash });
  if (kept) return partOf(kept, request.headers.get('Range'));
  try {
    return await fetch(request);
  } catch (error) {
    const notFound = keptSite.files['404.html'];
    if (request.mode !== 'navigate' || notFound === undefined) throw error;
    return (await keptFile(scope, { path: '404.html', hash: notFound })) ?? Response.error();
  }
}

/** Path from the site's root; `index.html` for a folder. */
function pathOf(url: string): string {
  const { pathname } = new URL(url);
  const path = decodeURIComponent(pathname.slice(new URL(scope).pathname.length));
  return path === '' || path.endsWith('/') ? `${path}index.html` : path;
}

async function obey(event: ExtendableMessageEvent): Promise<void> {
  const said = event.data as KeepingOrder;
  let failed = false;
  if (said.order === 'take-over') return self.skipWaiting();
  if (said.order === 'recordings') failed = !(await keepRecordings(said.keep));
  const kept = recordings.length > 0 && (await areKept(scope, recordings));
  const state: KeepingState = {
    recordingBytes: keptSite.recordingBytes,
    recordings: failed ? 'failed' : kept ? 'kept' : 'not-kept',
  };
  event.source?.postMessage(state);
}

/** Keeps or removes all recordings; false where one cannot be fetched or the device is full. */
async function keepRecordings(keep: boolean): Promise<boolean> {
  try {
    if (keep) {
      await keepFiles(scope, recordings);
      await keepMark(scope, recordingsWanted);
    } else {
      await forgetFiles(scope, [recordingsWanted, ...recordings]);
    }
    return true;
  } catch {
    return false;
  }
}
