/**
 * The preview changes pages as it serves them. The files in the folder stay those of a private build, so
 * that nothing of the preview can be published.
 */
const policyTag = /<meta http-equiv="Content-Security-Policy" content="([^"]*)">/;

/**
 * A page of the site with the preview's script before all others, and with the permission to connect to
 * this server. The element that registers the service worker is disabled: the worker would show pages
 * of an earlier build.
 */
export function withPreview(page: string, buildNumber: number): string {
  return page
    .replace(
      policyTag,
      (_, policy: string) =>
        `<meta http-equiv="Content-Security-Policy" content="${policy}; connect-src 'self'">\n` +
        `<script defer src="/preview/refresh.js" data-build-number="${buildNumber}"></script>\n` +
        '<link rel="stylesheet" href="/preview/panel.css">',
    )
    .replace('<div class="kept" data-kept ', '<div class="kept" ');
}

/** The site's page 404.html with links from the root, so that it can be shown for any path. */
export const fromRoot = (page: string): string =>
  page.replace(/ (href|src)="(?![a-z]+:|[/#"])/g, ' $1="/');

/** A page of the preview itself, which its script fills. `title` and `text` are plain text. */
export const ownPage = (page: {
  readonly title: string;
  readonly text: string;
  /** `refresh` or `tap`. */
  readonly script: 'refresh' | 'tap';
  readonly buildNumber: number;
}): string => `<!doctype html>
<html lang="en-GB" data-own>
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'self'; script-src 'self'; font-src 'self'; img-src 'self' data:; media-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${escaped(page.title)}</title>
<link rel="icon" href="data:,">
<link rel="stylesheet" href="/preview/own.css">
<link rel="stylesheet" href="/preview/panel.css">
<script defer src="/preview/${page.script}.js" data-build-number="${page.buildNumber}"></script>
</head>
<body>
<main id="page">
<h1>${escaped(page.title)}</h1>
<p>${escaped(page.text)}</p>
</main>
</body>
</html>
`;

const escaped = (text: string): string =>
  text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/"/g, '&quot;');
