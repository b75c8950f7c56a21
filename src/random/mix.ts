/** Well-mixing permutation of 32-bit integers. **Source:** finalizer of MurmurHash3 (A. Appleby, public domain), constants from memory. */
export function mix(h: number): number {
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

/** One 32-bit key from two, order matters. */
export function mix2(a: number, b: number): number {
  return mix(Math.imul(mix(a), 0x9e3779b1) + b);
}

/** 32-bit key of a text (document ids), by mixing its character codes. */
export function textKey(text: string): number {
  let h = text.length;
  for (let i = 0; i < text.length; i += 1) h = mix2(h, text.charCodeAt(i));
  return h;
}
