import { type PreviewNews, previewPaths } from '../../../shared/preview-news.ts';

/**
 * Hears the preview's news while the page is in view. A browser keeps few connections to one place,
 * so a page that is out of view lets its own go, and hears the last news when it comes back.
 */
export function hearNews(hear: (news: PreviewNews) => void, lose: () => void): void {
  let source: EventSource | null = null;
  const open = (): void => {
    source ??= new EventSource(previewPaths.news);
    source.onmessage = ({ data }) => hear(JSON.parse(data) as PreviewNews);
    source.onerror = lose; // the browser asks again by itself
  };
  const close = (): void => {
    source?.close();
    source = null;
  };
  const follow = (): void => (document.hidden ? close() : open());
  document.addEventListener('visibilitychange', follow);
  addEventListener('pagehide', close);
  addEventListener('pageshow', follow);
  follow();
}
