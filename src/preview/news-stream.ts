import type { IncomingMessage, ServerResponse } from 'node:http';
import type { PreviewNews } from '../../shared/preview-news.ts';

/** Hands news to every page that listens, as server-sent events (WHATWG HTML, section 9.2). */
export interface NewsStream {
  /** Answers a page that asks for news, and keeps the answer open. It hears the last news at once. */
  readonly listen: (request: IncomingMessage, response: ServerResponse) => void;
  readonly tell: (news: PreviewNews) => void;
  /** Ends every answer. */
  readonly close: () => void;
}

export function newsStream(first: PreviewNews): NewsStream {
  const listening = new Set<ServerResponse>();
  let last = first;
  const send = (response: ServerResponse): void => {
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
      send(response);
    },
    tell(news) {
      last = news;
      for (const response of listening) send(response);
    },
    close() {
      for (const response of listening) response.end();
      listening.clear();
    },
  };
}
