import { once } from 'node:events';
import type { Server } from 'node:http';
import { previewWords } from '../../shared/words/en/preview.ts';
import { UsageError } from '../app/usage-error.ts';

/** The only address that is listened on, which other machines cannot reach. */
export const loopback = '127.0.0.1';

/** Ports tried before giving up. */
const tries = 20;

/**
 * Listens on a port, or on the nearest free one above it, and returns its number. With 0 the system
 * chooses one. Throws `UsageError` where 20 ports are in use, or the system refuses one.
 */
export async function listenNearby(server: Server, wanted: number): Promise<number> {
  const last = Math.min(wanted + tries - 1, 65_535);
  for (let port = wanted; port <= last; port++) {
    try {
      const listening = once(server, 'listening');
      server.listen({ port, host: loopback, exclusive: true });
      await listening;
      const address = server.address();
      return typeof address === 'object' && address !== null ? address.port : port;
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === 'EACCES') throw new UsageError(previewWords.portRefused(port));
      if (code !== 'EADDRINUSE') throw error;
    }
  }
  throw new UsageError(previewWords.portsTaken(wanted, last));
}
