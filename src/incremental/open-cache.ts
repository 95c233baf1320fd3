import { hash, randomBytes } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { deflateRawSync, inflateRawSync } from 'node:zlib';

/**
 * What earlier builds worked out, one file an entry, named by the hash of all that it was made from.
 * Nothing here is needed: any of it may be deleted, torn or overwritten, and is then worked out anew.
 */
export interface Cache {
  /** What was kept under a key; undefined where there is nothing whole. */
  readonly read: (key: string) => unknown;
  /**
   * Keeps a value: plain data, maps, sets and big integers. One that cannot be written is let go.
   * `isHasty`: every build reads it and writes it, so that time counts for more than room.
   */
  readonly write: (key: string, value: unknown, isHasty?: boolean) => void;
  /** Deletes the entries whose keys are not wanted any more. */
  readonly keepOnly: (isWanted: (key: string) => boolean) => void;
}

/** An entry is the SHA-256 of what follows, then the value serialised, and deflated where it is long. */
const hashBytes = 32;

/** Fewer bytes than this are quicker to write than to deflate. The first of a serialised value is never 0. */
const worthDeflating = 1 << 15;
const deflated = Buffer.of(0);

export function openCache(folder: string): Cache {
  attempt(() => mkdirSync(folder, { recursive: true }));
  const path = (key: string): string => join(folder, key);
  return {
    read(key) {
      try {
        const bytes = readFileSync(path(key));
        const body = bytes.subarray(hashBytes);
        if (!hashOf(body).equals(bytes.subarray(0, hashBytes))) return undefined;
        return deserialize(body[0] === 0 ? inflateRawSync(body.subarray(1)) : body);
      } catch {
        return undefined; // not there, or not readable: it is worked out anew
      }
    },
    write(key, value, isHasty = false) {
      const plain = serialize(value);
      const body =
        isHasty || plain.length < worthDeflating
          ? plain
          : Buffer.concat([deflated, deflateRawSync(plain, { level: 1 })]);
      const part = path(`.${key}-${randomBytes(4).toString('hex')}`);
      try {
        writeFileSync(part, Buffer.concat([hashOf(body), body]));
        renameSync(part, path(key));
      } catch {
        attempt(() => rmSync(part, { force: true })); // a full disk costs the next build time, and nothing else
      }
    },
    keepOnly(isWanted) {
      attempt(() => {
        for (const name of readdirSync(folder)) {
          if (!isWanted(name)) rmSync(path(name), { force: true });
        }
      });
    },
  };
}

/** Where a cache cannot be kept, a build is slower, and right all the same. */
function attempt(work: () => void): void {
  try {
    work();
  } catch {
    // as above
  }
}

const hashOf = (bytes: Uint8Array): Buffer => hash('sha256', bytes, 'buffer');
