/**
 * The part of a kept file that a `Range` header requests (RFC 9110, section 14): 206 with the bytes, or
 * 416 where the range is outside the file. The whole file where the header names no single range of
 * bytes. Audio players seek by ranges, and some play nothing without.
 */
export async function partOf(response: Response, range: string | null): Promise<Response> {
  const asked = /^bytes=(\d*)-(\d*)$/.exec(range ?? '');
  if (!asked || (asked[1] === '' && asked[2] === '')) return response;
  const content = await response.arrayBuffer();
  const size = content.byteLength;
  const from = asked[1] === '' ? Math.max(0, size - Number(asked[2])) : Number(asked[1]);
  const to = asked[1] === '' || asked[2] === '' ? size - 1 : Math.min(Number(asked[2]), size - 1);
  const headers = new Headers(response.headers);
  if (from > to) {
    headers.set('Content-Range', `bytes */${size}`);
    return new Response(null, { status: 416, headers });
  }
  headers.set('Content-Range', `bytes ${from}-${to}/${size}`);
  headers.set('Content-Length', `${to - from + 1}`);
  return new Response(content.slice(from, to + 1), { status: 206, headers });
}
