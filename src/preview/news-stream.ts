import type { IncomingMessage, ServerResponse } from 'node:http';
import type { PreviewNews } from '../../shared/preview-news.ts';

/** Sends news to all open pages as server-sent events (WHATWG HTML, section 9.2). */
export interface NewsStream {
  /** Answers a page's request, sends it the latest news, and keeps the response open. */
  readonly listen: (request: IncomingMessage, response: ServerResponse) => void;
  /** Sends news to all pages. */
  readonly send: (news: PreviewNews) => void;
  /** Ends all responses. */
  readonly close: () => void;
}

/** Opens a stream; `first` is sent to pages until there is other news. */
export function newsStream(first: PreviewNews): NewsStream {
  const listening = new Set<ServerResponse>();
  let last = first;
  const sendLast = (response: ServerResponse): void => {
    response.write(`data: ${JSON.stringify(last)}\n\n`);
  };
  return {
    listen(request, response) {
      response.writeHead(200, { 'Content-Type': 'text/event-stream' });
      if (request.method === 'HEAD') {
        response.end();
        return;
      }
      listening.add(response);
      response.on('close', () => listening.delete(response));
      response.write('retry: 700\n');
      sendLast(response);
    },
    send(news) {
      last = news;
      for (const response of listening) sendLast(response);
    },
    close() {
      for (const response of listening) response.end();
      listening.clear();
    },
  };
}
