/**
 * Writes plain data as JSON that is the same for equal data: names in order of their UTF-16 code units, no spaces, numbers as
 * ECMAScript writes them. Parts that are `undefined` are left out, as in JSON.
 * @throws TypeError for what JSON has no form for: a number that is not finite, a function, a symbol, a bigint, `undefined` in a list
 *
 * **Source:** Rundgren, Jordan & Erdtman (2020) RFC 8785.
 */
export function canonicalJson(value: unknown): string {
  if (value === null || typeof value === 'string' || typeof value === 'boolean') return JSON.stringify(value);
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw new TypeError('JSON has no form for a number that is not finite.');
    return JSON.stringify(value);
  }
  if (Array.isArray(value)) return `[${value.map((item) => canonicalJson(item)).join(',')}]`;
  if (typeof value !== 'object') throw new TypeError(`JSON has no form for a ${typeof value}.`);
  const parts = Object.entries(value).filter(([, part]) => part !== undefined);
  parts.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
  return `{${parts.map(([name, part]) => `${JSON.stringify(name)}:${canonicalJson(part)}`).join(',')}}`;
}

/**
 * Returns the SHA-256 of the canonical JSON of plain data, as 64 hexadecimal digits: the name by which results know their programme.
 * Browsers offer it on secure pages only (https, or this machine); elsewhere it rejects.
 *
 * **Source:** FIPS 180-4, by the platform.
 */
export async function hashOf(value: unknown): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(canonicalJson(value)));
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
