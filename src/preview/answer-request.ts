import { readFileSync } from 'node:fs';
import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';
import { join } from 'node:path';
import sirv from 'sirv';
import { previewPaths } from '../../shared/preview-news.ts';
import { previewWords } from '../../shared/words/en/preview.ts';
import type { NewsLine } from './news-line.ts';
import { fromRoot, ownPage, withPreview } from './preview-page.ts';
import type { SiteState } from './site-state.ts';

/** What the server of a preview answers from; asked anew at each request. */
export interface PreviewAnswers {
  /** Folder of the site. */
  readonly folder: string;
  /** The site's own list of its files: nothing else in the folder, or beside it, is handed out. */
  readonly site: () => SiteState;
  readonly turn: () => number;
  readonly port: () => number;
  readonly news: Pick<NewsLine, 'listen'>;
  /** A text of the preview's own, by its path, with its type; null where there is none. */
  readonly ownText: (path: string) => { readonly type: string; readonly text: string } | null;
}

/** Asked of every browser, for every answer. */
const always = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  // No page of another site may frame these or take in their scripts, which hold private notes.
  'Content-Security-Policy': "frame-ancestors 'none'",
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
};

/**
 * Answers the browser of the person at this machine, and nobody else: a request must name this
 * machine as its host, so that a page from elsewhere whose name was pointed here (DNS rebinding) is
 * turned away; it may read only; and it gets files that the build has listed, by their exact names,
 * so that there is no path out of the site.
 */
export function answerRequest(answers: PreviewAnswers): RequestListener {
  const files = sirv(answers.folder, { dev: true, dotfiles: true });
  return (request, response) => {
    for (const [name, value] of Object.entries(always)) response.setHeader(name, value);
    if (!isThisMachine(request.headers.host, answers.port())) {
      return sendText(response, 403, previewWords.otherHost);
    }
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.setHeader('Allow', 'GET, HEAD');
      return sendText(response, 405, previewWords.readOnly);
    }
    const path = pathOf(request.url ?? '');
    if (path === null) return sendText(response, 400, previewWords.noPath);
    if (path === previewPaths.news) return answers.news.listen(request, response);
    const own = answers.ownText(path);
    if (own) return send(response, 200, own.type, own.text);
    return answerFile(path, request, response, answers, files);
  };
}

function answerFile(
  path: string,
  request: IncomingMessage,
  response: ServerResponse,
  { folder, site, turn }: PreviewAnswers,
  files: ReturnType<typeof sirv>,
): void {
  const state = site();
  const name = path.slice(1) + (path.endsWith('/') ? 'index.html' : '');
  const sendPage = (status: number, page: string): void =>
    send(response, status, 'text/html; charset=utf-8', page);
  const readPage = (file: string): string =>
    withPreview(readFileSync(join(folder, file), 'utf8'), turn());
  if (state.has(name) && name !== keeper) {
    if (name.endsWith('.html')) return sendPage(200, readPage(name));
    // Only now, when the file is known to be the site's, and by its name in the list.
    request.url = encodeURI(`/${name}`);
    return files(request, response);
  }
  if (state.has(`${name}/index.html`)) {
    response.writeHead(302, { Location: encodeURI(`/${name}/`) }).end();
    return;
  }
  const own = { script: 'refresh', turn: turn() };
  if (state.size === 0) {
    return sendPage(503, ownPage({ ...own, ...previewWords.notYet }));
  }
  if (/\.(?:pdf|zip)$/.test(name)) return sendPage(404, ownPage({ ...own, ...previewWords.leftOut }));
  return sendPage(404, fromRoot(readPage('404.html')));
}

/** The service worker, which a preview must not have. */
const keeper = 'keep-site.js';

/** Names by which a browser here reaches this server. */
function isThisMachine(host: string | undefined, port: number): boolean {
  const names = ['127.0.0.1', 'localhost'];
  return names.some(name => host === `${name}:${port}` || (port === 80 && host === name));
}

/** The path asked for, decoded once; null where it is none. */
function pathOf(url: string): string | null {
  try {
    const path = decodeURIComponent(/^\/[^?#]*/.exec(url)?.[0] ?? '');
    return path === '' || path.includes('\0') ? null : path;
  } catch {
    return null;
  }
}

const sendText = (response: ServerResponse, status: number, text: string): void =>
  send(response, status, 'text/plain; charset=utf-8', `${text}\n`);

function send(response: ServerResponse, status: number, type: string, text: string): void {
  const body = Buffer.from(text);
  response.writeHead(status, { 'Content-Type': type, 'Content-Length': body.length });
  response.end(response.req.method === 'HEAD' ? undefined : body);
}
