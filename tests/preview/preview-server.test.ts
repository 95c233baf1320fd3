import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, request } from 'node:http';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PreviewNews } from '../../shared/preview-news.ts';
import { buildSite } from '../../src/incremental/open-builds.ts';
import { openPreview, type Preview } from '../../src/preview/open-preview.ts';
import { readBook } from '../../src/read/read-book.ts';
import { lessonText, previewFolder, writeSmallBook } from './small-book.ts';

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, unknown>>;
  readonly text: string;
}

const root = writeSmallBook();
const folders = Array.from({ length: 3 }, previewFolder);
const [folder = '', secondFolder = '', thirdFolder = ''] = folders;
const lesson = join(root, 'lessons/2026-09-15-first-evening.md');
const told: PreviewNews[] = [];
let preview: Preview;
let woken = (): void => {};

beforeAll(async () => {
  preview = await openPreview({
    root,
    folder,
    port: 0,
    progress: () => {},
    onBuild: (_, news) => {
      told.push(news);
      woken();
    },
    onDefect: error => {
      throw error;
    },
  });
  await preview.firstBuild;
});

afterAll(async () => {
  await preview.close();
  for (const made of [root, ...folders]) rmSync(made, { recursive: true, force: true });
});

/** Asks as written: nothing tidies the path first, as a browser would. */
function ask(
  path: string,
  options: {
    readonly method?: string;
    readonly host?: string;
    readonly headers?: object;
    readonly port?: number;
  } = {},
): Promise<Answer> {
  const port = options.port ?? preview.port;
  const headers = { host: options.host ?? `127.0.0.1:${port}`, ...options.headers };
  return new Promise((resolve, reject) => {
    const asked = request(
      { host: '127.0.0.1', port, path, method: options.method ?? 'GET', headers, agent: false },
      answer => {
        let text = '';
        answer.setEncoding('utf8').on('data', (part: string) => {
          text += part;
        });
        answer.on('end', () =>
          resolve({ status: answer.statusCode ?? 0, headers: answer.headers, text }),
        );
      },
    );
    asked.on('error', reject).end();
  });
}

/** Changes the book and waits for a build of which this is true. */
async function turnAfter(
  change: () => void,
  isIt: (news: PreviewNews) => boolean,
): Promise<PreviewNews> {
  const from = told.length;
  change();
  for (;;) {
    const found = told.slice(from).find(isIt);
    if (found) return found;
    await new Promise<void>(resolve => {
      woken = resolve;
    });
  }
}

const save = (text: string, isIt: (news: PreviewNews) => boolean): Promise<PreviewNews> =>
  turnAfter(() => writeFileSync(lesson, text), isIt);

describe('what a preview hands out', () => {
  it('is the book, with private notes and unfinished pages, both marked', async () => {
    const first = await ask('/lessons/2026-09-15-first-evening.html');
    expect(first.text).toContain('Bring the spare rosin.');
    expect(first.text).toContain('class="private"');
    expect(first.text).not.toContain('unfinished-flag');
    const second = await ask('/lessons/2026-09-22-second-evening.html');
    expect(second.text).toContain('Still to be thought out.');
    expect(second.text).toContain('unfinished-flag');
    expect((await ask('/lessons/')).text).toContain('unfinished-mark');
  });

  it('says so where a file of it has been taken away, and goes on', async () => {
    const page = join(folder, 'site/how-to-read.html');
    const text = readFileSync(page, 'utf8');
    rmSync(page);
    expect(await ask('/how-to-read.html')).toMatchObject({ status: 503 });
    writeFileSync(page, text);
    expect(await ask('/how-to-read.html')).toMatchObject({ status: 200 });
  });

  it('is not what is published: there an unfinished page and a private note are left out', async () => {
    const out = mkdtempSync(join(tmpdir(), 'bowbook-out-'));
    await buildSite({ root, out, isPrivate: false, isQuick: true, progress: () => {} });
    expect(readdirSync(join(out, 'lessons')).sort()).toEqual([
      '2026-09-15-first-evening.html',
      'index.html',
    ]);
    const files = readdirSync(out, { recursive: true, encoding: 'utf8' });
    expect(files.filter(file => /preview/.test(file))).toEqual([]);
    expect(existsSync(join(out, 'keep-site.js'))).toBe(true);
    rmSync(out, { recursive: true, force: true });
  });

  it('has the preview’s script in every page, may ask only this server, and keeps nothing', async () => {
    const paths = ['/', '/index.html', '/tunes/kettle-on-the-sill.html', '/how-to-read.html'];
    for (const path of paths) {
      const { status, text } = await ask(path);
      expect(status).toBe(200);
      expect(text).toContain('src="/preview/refresh.js"');
      expect(text).toMatch(/content="default-src[^"]*; connect-src 'self'">/);
      expect(text).not.toMatch(/ data-kept\b/);
    }
    expect((await ask('/keep-site.js')).status).toBe(404);
  });

  it('is whole: recordings by any name, and in parts', async () => {
    const path = '/media/kettle%20100%25.wav';
    const { status, headers } = await ask(path, { method: 'HEAD' });
    expect([status, headers['content-length']]).toEqual([200, '96044']);
    const part = await ask(path, { headers: { range: 'bytes=0-3' } });
    expect([part.status, part.text]).toEqual([206, 'RIFF']);
  });

  it('says what a preview leaves out, and what is not there, at any depth', async () => {
    expect((await ask('/tune-book.pdf')).text).toContain('bowbook build');
    const missing = await ask('/some/where/else.html');
    expect(missing.status).toBe(404);
    expect(missing.text).toContain('href="/assets/book.css"');
    expect(missing.text).not.toMatch(/(?:href|src)="(?:assets|lessons)/);
  });
});

describe('the server is safe', () => {
  it('answers only who names this machine (DNS rebinding)', async () => {
    const { port } = preview;
    for (const host of [`localhost:${port}`, `127.0.0.1:${port}`]) {
      expect((await ask('/', { host })).status).toBe(200);
    }
    const others = ['example.org', `example.org:${port}`, 'localhost', `127.0.0.1:${port + 1}`];
    const likenesses = [`localhost:${port}.example.org`, `127.0.0.1.example.org:${port}`, ' '];
    for (const host of [...others, ...likenesses]) {
      for (const path of ['/', '/preview/news', '/tunes/kettle-on-the-sill.js']) {
        const { status, text } = await ask(path, { host });
        expect(status, host).toBe(403);
        expect(text).not.toContain('Kettle');
      }
    }
  });

  it('is read only', async () => {
    for (const method of ['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS']) {
      const { status, headers } = await ask('/', { method });
      expect([status, headers.allow]).toEqual([405, 'GET, HEAD']);
    }
    const head = await ask('/', { method: 'HEAD' });
    expect([head.status, head.text]).toEqual([200, '']);
  });

  it.each([
    '/../bowbook.yaml',
    '/%2e%2e/%2e%2e/etc/passwd',
    '/..%2f..%2f..%2fetc%2fpasswd',
    '/%252e%252e/etc/passwd',
    '/..%5c..%5cetc%5cpasswd',
    '/media/../../../../../../etc/passwd',
    '/assets/..%2f..%2fcache',
    '//etc/passwd',
    '/.bowbook-site/lock',
    '/bowbook-manifest.json',
    '/preview/../../package.json',
  ])('hands out nothing but the site: %s', async path => {
    const { status, text } = await ask(path);
    expect(status).toBe(404);
    expect(text).not.toMatch(/root:|"version"|rights: own|"bowbook"/);
  });

  it.each(['/%', '/%00', '/%c0%ae%c0%ae/', 'http://example.org/', '*'])(
    'takes no path that is none: %s',
    async path => {
      expect((await ask(path)).status).toBe(400);
    },
  );

  it('lets no page of another place frame or take in its own', async () => {
    const { headers } = await ask('/tunes/kettle-on-the-sill.js');
    expect(headers).toMatchObject({
      'cross-origin-resource-policy': 'same-origin',
      'content-security-policy': "frame-ancestors 'none'",
      'x-content-type-options': 'nosniff',
      'cache-control': 'no-store',
    });
    expect(headers).not.toHaveProperty('access-control-allow-origin');
  });

  it('listens to no address that another machine can reach', async () => {
    const others = Object.values(networkInterfaces())
      .flatMap(addresses => addresses ?? [])
      .filter(({ family, internal }) => family === 'IPv4' && !internal);
    for (const { address } of others) {
      await expect(
        fetch(`http://${address}:${preview.port}/`, { signal: AbortSignal.timeout(3000) }),
      ).rejects.toThrow();
    }
  });
});

describe('when the book changes', () => {
  const page = 'lessons/2026-09-15-first-evening.html';

  it('only what changed is made again, and pages are told', async () => {
    const isBuilt = (news: PreviewNews) => news.outcome === 'built' && news.changed.length > 0;
    const news = await save(lessonText('We danced it through.'), isBuilt);
    expect(news.changed.filter(path => path !== 'keep-site.js')).toEqual([page]);
    expect((await ask(`/${page}`)).text).toContain('We danced it through.');
  });

  it('an error is told with place, line, caret and mend, and the last good page stays', async () => {
    const wrong = lessonText('::map{of=kettle-on-the-sill unot=4}');
    const news = await save(wrong, ({ outcome }) => outcome === 'failed');
    expect([news.changed, news.counted]).toEqual([[], '1 error']);
    expect(news.problems[0]).toMatchObject({
      rule: 'attribute-unknown',
      severity: 'error',
      file: 'lessons/2026-09-15-first-evening.md',
      at: 'Line 5, column 29',
    });
    expect(news.problems[0]?.mend).toContain('`unit`');
    const [line, caret] = news.problems[0]?.excerpt ?? [];
    expect(line).toContain('::map{of=');
    expect(caret?.indexOf('^')).toBe(line?.indexOf('unot='));
    expect((await ask(`/${page}`)).text).toContain('We danced it through.');
    await save(lessonText('Mended.'), ({ outcome }) => outcome === 'built');
    expect((await ask(`/${page}`)).text).toContain('Mended.');
  });

  it('the last of many saves in a row is the one that is shown', async () => {
    for (const pause of [0, 5, 20, 45]) {
      for (let i = 0; i < 5; i++) {
        writeFileSync(lesson, lessonText(`Draft ${i}.`));
        await new Promise(resolve => setTimeout(resolve, pause));
      }
      writeFileSync(lesson, lessonText(`After pauses of ${pause}.`));
      await expect
        .poll(async () => (await ask(`/${page}`)).text, { timeout: 20_000 })
        .toContain(`After pauses of ${pause}.`);
    }
  });

  it('a new lesson appears, and one that is taken away is gone', async () => {
    const added = 'lessons/2026-09-29-third-evening';
    const file = join(root, `${added}.md`);
    const tells = ({ changed }: PreviewNews) => changed.includes(`${added}.html`);
    await turnAfter(() => writeFileSync(file, '---\ntitle: Third evening\n---\n\nNew.\n'), tells);
    expect((await ask(`/${added}.html`)).status).toBe(200);
    await turnAfter(() => rmSync(file), tells);
    expect((await ask(`/${added}.html`)).status).toBe(404);
  });
});

describe('what holds only with unfinished pages', () => {
  it('is warned of where it stands, and is what the build to publish finds there', async () => {
    const draft = join(root, 'lessons/2026-09-22-second-evening.md');
    const before = [readFileSync(draft, 'utf8'), readFileSync(lesson, 'utf8')] as const;
    const abc = '```abc\nT:Lid Off\nR:reel\nK:D\nDEFG ABcd|d8|\n```\n';
    writeFileSync(draft, before[0] + abc);
    const needs = ({ problems }: PreviewNews) => problems.some(p => p.rule === 'unfinished-needed');
    const news = await save(lessonText('::map{of=lid-off}'), needs);
    expect([news.outcome, news.counted]).toEqual(['built', '1 warning']);
    const [told] = news.problems;
    expect(told).toMatchObject({
      file: 'lessons/2026-09-15-first-evening.md',
      severity: 'warning',
    });
    const published = await readBook(root);
    const [error] = published.problems.filter(p => p.severity === 'error');
    expect(told?.message).toContain(`\`${error?.rule}\``);
    expect(told?.at).toBe(`Line ${error?.place?.line}, column ${error?.place?.column}`);
    writeFileSync(draft, before[0]);
    await save(before[1], ({ problems }) => problems.length === 0);
  });
});

describe('a preview that cannot begin as asked', () => {
  it('takes the next port where one is in use, and lets it go at the end', async () => {
    const other = createServer();
    await new Promise<void>(done => other.listen(0, '127.0.0.1', done));
    const { port: taken } = other.address() as { port: number };
    const second = await openPreview({
      root,
      folder: secondFolder,
      port: taken,
      progress: () => {},
      onBuild: () => {},
      onDefect: () => {},
    });
    await second.firstBuild;
    expect(second.port).toBeGreaterThan(taken);
    expect((await ask('/', { port: second.port })).status).toBe(200);
    await second.close();
    await expect(ask('/', { port: second.port })).rejects.toThrow(/ECONNREFUSED/);
    await new Promise(done => other.close(done));
  });

  it('shows a stopgap for a book that has not yet been built without an error', async () => {
    const broken = writeSmallBook();
    writeFileSync(join(broken, 'lessons/2026-09-15-first-evening.md'), lessonText('::mapp'));
    const failing = await openPreview({
      root: broken,
      folder: thirdFolder,
      port: 0,
      progress: () => {},
      onBuild: () => {},
      onDefect: () => {},
    });
    await failing.firstBuild;
    const { status, text } = await ask('/', { port: failing.port });
    expect(status).toBe(503);
    expect(text).toContain('src="/preview/refresh.js"');
    await failing.close();
    rmSync(broken, { recursive: true, force: true });
  });
});
