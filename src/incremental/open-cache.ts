import { hash, randomBytes } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { deflateRawSync, inflateRawSync } from 'node:zlib';

/**
 * Results of earlier builds, one file per entry. A result is named by the hash of its inputs, so an entry
 * never becomes wrong. Entries may be deleted or damaged at any time; they are then computed again.
 */
export interface Cache {
  /** The value under a key; undefined where it is missing or damaged. Never throws. */
  readonly read: (key: string) => unknown;
  /**
   * Stores a value: plain data, maps, sets and big integers. Where the disk refuses, it stores nothing and
   * does not throw. `isHasty` skips compression, for an entry that every build reads and writes.
   */
  readonly write: (key: string, value: unknown, isHasty?: boolean) => void;
  /** Deletes the entries whose keys are not wanted. */
  readonly keepOnly: (isWanted: (key: string) => boolean) => void;
}

/** An entry is the SHA-256 of the rest, then the serialised value, deflated where it is long. */
const hashBytes = 32;

/** From this many bytes deflating is quicker than writing them. */
const worthDeflating = 1 << 15;
/** Marks a deflated value: the first byte of one that `serialize` wrote is never 0. */
const deflated = Buffer.of(0);

/** Opens the cache in a folder, which is created where it is missing. */
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
        return undefined; // missing or unreadable: it is computed again
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
        attempt(() => rmSync(part, { force: true })); // a full disk only makes the next build slower
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

/** Runs `work` and ignores its errors: without a cache a build is slower, and its result the same. */
function attempt(work: () => void): void {
  try {
    work();
  } catch {
    // ignored, see above
  }
}

const hashOf = (bytes: Uint8Array): Buffer => hash('sha256', bytes, 'buffer');
