import { inflateSync } from 'node:zlib';

/**
 * Returns the TrueType or OpenType font in a WOFF 1.0 file, renamed to the given family. Throws where the file is
 * no WOFF 1.0 font.
 *
 * WOFF keeps the tables of a font, each deflated where that makes it smaller, behind a directory of
 * 20 bytes a table (W3C, WOFF File Format 1.0, sections 3 to 5); the font proper has a directory of
 * 16 bytes a table and its tables at multiples of four. The `name` table is replaced: the npm
 * packages cut one family into files by script, all of one name, and a typesetter that is asked for
 * that name takes one of them and never looks into the others.
 */
export function unwrapFont(woff: Buffer, family: string): Buffer {
  if (woff.toString('latin1', 0, 4) !== 'wOFF') throw new Error('not a WOFF 1.0 font');
  const tables = Array.from({ length: woff.readUInt16BE(12) }, (_, i): Table => {
    const entry = 44 + 20 * i;
    const offset = woff.readUInt32BE(entry + 4);
    const stored = woff.subarray(offset, offset + woff.readUInt32BE(entry + 8));
    const whole = woff.readUInt32BE(entry + 12);
    const tag = woff.toString('latin1', entry, entry + 4);
    return { tag, data: stored.length < whole ? inflateSync(stored) : stored };
  });
  const named = tables.map(t => (t.tag === 'name' ? { ...t, data: renamed(t.data, family) } : t));
  return writeTables(woff.subarray(4, 8), named);
}

interface Table {
  readonly tag: string;
  readonly data: Buffer;
}

/** Writes a font file of tables, which must be in the order of their tags. */
function writeTables(flavour: Buffer, tables: readonly Table[]): Buffer {
  const head = Buffer.alloc(12 + 16 * tables.length);
  flavour.copy(head);
  const power = Math.floor(Math.log2(tables.length));
  head.writeUInt16BE(tables.length, 4);
  head.writeUInt16BE(16 * 2 ** power, 6);
  head.writeUInt16BE(power, 8);
  head.writeUInt16BE(16 * (tables.length - 2 ** power), 10);
  const parts = [head];
  let at = head.length;
  for (const [i, { tag, data }] of tables.entries()) {
    const entry = 12 + 16 * i;
    const padded = Buffer.alloc(Math.ceil(data.length / 4) * 4);
    data.copy(padded);
    head.write(tag, entry, 'latin1');
    head.writeUInt32BE(checksum(padded), entry + 4);
    head.writeUInt32BE(at, entry + 8);
    head.writeUInt32BE(data.length, entry + 12);
    parts.push(padded);
    at += padded.length;
  }
  return Buffer.concat(parts);
}

function checksum(padded: Buffer): number {
  let sum = 0;
  for (let i = 0; i < padded.length; i += 4) sum = (sum + padded.readUInt32BE(i)) >>> 0;
  return sum;
}

/** Names 1 and 16 are the family, 4 the full name, 6 the PostScript name (OpenType, `name`). */
const familyNames = [1, 4, 6, 16];

/** A `name` table with the family changed. Only its names in English for Windows are kept: all readers know those. */
function renamed(table: Buffer, family: string): Buffer {
  const strings = table.readUInt16BE(4);
  const records = Array.from({ length: table.readUInt16BE(2) }, (_, i) => 6 + 12 * i)
    .map(at => Array.from({ length: 6 }, (_, k) => table.readUInt16BE(at + 2 * k)))
    .filter(([platform, , language]) => platform === 3 && language === 0x409)
    .map(([, , , name = 0, length = 0, offset = 0]) => {
      const own = table.subarray(strings + offset, strings + offset + length);
      return { name, text: familyNames.includes(name) ? utf16(ownName(name, family)) : own };
    });
  const head = Buffer.alloc(6 + 12 * records.length);
  head.writeUInt16BE(records.length, 2);
  head.writeUInt16BE(head.length, 4);
  let offset = 0;
  for (const [i, { name, text }] of records.entries()) {
    const fields = [3, 1, 0x409, name, text.length, offset];
    for (const [k, field] of fields.entries()) head.writeUInt16BE(field, 6 + 12 * i + 2 * k);
    offset += text.length;
  }
  return Buffer.concat([head, ...records.map(r => r.text)]);
}

const ownName = (name: number, family: string): string =>
  name === 6 ? family.replaceAll(' ', '') : family;

const utf16 = (text: string): Buffer => Buffer.from(text, 'utf16le').swap16();
