import { readFileSync } from 'node:fs';
import type { IncomingMessage, RequestListener, ServerResponse } from 'node:http';
import { join } from 'node:path';
import sirv from 'sirv';
import { previewPaths } from '../../shared/preview-news.ts';
import { previewWords } from '../../shared/words/en/preview.ts';
import type { NewsStream } from './news-stream.ts';
import { fromRoot, ownPage, withPreview } from './preview-page.ts';
import type { SiteState } from './site-state.ts';

/** What the preview's server answers from. Functions are called at each request. */
export interface PreviewAnswers {
  /** Folder of the site. */
  readonly folder: string;
  /** The files of the site's manifest: no other file is served. */
  readonly site: () => SiteState;
  readonly buildNumber: () => number;
  readonly port: () => number;
  readonly news: Pick<NewsStream, 'listen'>;
  /** One of the preview's own files, by its path, with its media type; null for any other path. */
  readonly ownText: (path: string) => { readonly type: string; readonly text: string } | null;
}

/** Headers of every response. */
const always = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  // No page of another site may frame these pages or load their scripts, which hold private notes.
  'Content-Security-Policy': "frame-ancestors 'none'",
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
};

/**
 * Makes the request listener of the preview's server, which answers only browsers on this machine. A
 * request must name this machine as its host, so that DNS rebinding by a page from elsewhere fails
 * (403); its method must be GET or HEAD (405); and it gets only files that the manifest lists, by their
 * exact names, so that no path leads out of the site.
 */
export function answerRequest(answers: PreviewAnswers): RequestListener {
  const files = sirv(answers.folder, { dev: true, dotfiles: true });
  return (request, response) => {
    for (const [name, value] of Object.entries(always)) response.setHeader(name, value);
    const path = pathOf(request.url ?? '');
    const refused = refusal(request, path, answers.port());
    if (refused !== null || path === null) send(response, refused ?? plain(400, ''));
    else if (path === previewPaths.news) answers.news.listen(request, response);
    else {
      const answer = answerOrWait(path, answers);
      if ('file' in answer) {
        // `answer.file` is a name in the site's manifest.
        request.url = encodeURI(`/${answer.file}`);
        files(request, response);
      } else send(response, answer);
    }
  };
}

interface TextAnswer {
  readonly status: number;
  readonly type: string;
  readonly text: string;
  /** Further headers. */
  readonly headers?: Readonly<Record<string, string>>;
}

function refusal(request: IncomingMessage, path: string | null, port: number): TextAnswer | null {
  if (!isThisMachine(request.headers.host, port)) return plain(403, previewWords.otherHost);
  if (request.method !== 'GET' && request.method !== 'HEAD') {
    return { ...plain(405, previewWords.readOnly), headers: { Allow: 'GET, HEAD' } };
  }
  return path === null ? plain(400, previewWords.noPath) : null;
}

/** As `answerTo`; the page "not built yet" where a listed file has gone. */
function answerOrWait(path: string, answers: PreviewAnswers): ReturnType<typeof answerTo> {
  try {
    return answerTo(path, answers);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    return notYet(answers.buildNumber());
  }
}

/** The response for a path: a text, or the name of a site's file to send unchanged. */
function answerTo(
  path: string,
  { folder, site, buildNumber, ownText }: PreviewAnswers,
): TextAnswer | { readonly file: string } {
  const own = ownText(path);
  if (own) return { status: 200, ...own };
  const state = site();
  const name = path.slice(1) + (path.endsWith('/') ? 'index.html' : '');
  const readPage = (file: string): string =>
    withPreview(readFileSync(join(folder, file), 'utf8'), buildNumber());
  if (state.has(name) && name !== serviceWorker) {
    return name.endsWith('.html') ? page(200, readPage(name)) : { file: name };
  }
  if (state.has(`${name}/index.html`)) {
    return { ...plain(302, ''), headers: { Location: encodeURI(`/${name}/`) } };
  }
  const stopgap = { script: 'refresh', buildNumber: buildNumber() } as const;
  if (state.size === 0) return notYet(buildNumber());
  if (/\.(?:pdf|zip)$/.test(name)) {
    return page(404, ownPage({ ...stopgap, ...previewWords.leftOut }));
  }
  return page(404, fromRoot(readPage('404.html')));
}

const notYet = (buildNumber: number): TextAnswer =>
  page(503, ownPage({ script: 'refresh', buildNumber, ...previewWords.notYet }));

/** The service worker, which the preview does not serve: it would show pages of an earlier build. */
const serviceWorker = 'keep-site.js';

/** Whether a `Host` header names this machine and port. */
function isThisMachine(host: string | undefined, port: number): boolean {
  const names = ['127.0.0.1', 'localhost'];
  return names.some(name => host === `${name}:${port}` || (port === 80 && host === name));
}

/** The decoded path of a request; null where it is malformed. */
function pathOf(url: string): string | null {
  try {
    const path = decodeURIComponent(/^\/[^?#]*/.exec(url)?.[0] ?? '');
    return path === '' || path.includes('\0') ? null : path;
  } catch {
    return null;
  }
}

const plain = (status: number, text: string): TextAnswer => ({
  status,
  type: 'text/plain; charset=utf-8',
  text: `${text}\n`,
});

const page = (status: number, text: string): TextAnswer => ({
  status,
  type: 'text/html; charset=utf-8',
  text,
});

function send(response: ServerResponse, { status, type, text, headers }: TextAnswer): void {
  const body = Buffer.from(text);
  response.writeHead(status, {
    'Content-Type': type,
    'Content-Length': body.length,
    ...headers,
  });
  response.end(response.req.method === 'HEAD' ? undefined : body);
}
