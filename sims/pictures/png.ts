import { crc32, deflateSync, inflateSync } from 'node:zlib';

/*
 * Packs a screenshot into a PNG with a palette: a page is paper, ink and a few plan colours, and a browser packs for speed, not for size.
 * Source: W3C, Portable Network Graphics (PNG) Specification (Third Edition): §5.3 chunks, §9 filters, §11.2 PLTE.
 */

const SIGNATURE_BYTES = 8;
const CHANNELS = 3;
const MOST_COLOURS = 256;
/** Colours closer than this (squared distance, steps of 0–255) share a place of the palette. */
const SAME = 5 ** 2;

interface Chunk {
  readonly type: string;
  readonly data: Buffer;
}

function chunksOf(png: Buffer): Chunk[] {
  const chunks: Chunk[] = [];
  for (let at = SIGNATURE_BYTES; at < png.length;) {
    const length = png.readUInt32BE(at);
    chunks.push({ type: png.toString('latin1', at + 4, at + 8), data: png.subarray(at + 8, at + 8 + length) });
    at += length + 12;
  }
  return chunks;
}

function written({ type, data }: Chunk): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, sum]);
}

/** Whichever of left, above and above-left lies nearest to left + above − above-left. */
function paeth(left: number, above: number, corner: number): number {
  const [toLeft, toAbove, toCorner] = [Math.abs(above - corner), Math.abs(left - corner), Math.abs(left + above - 2 * corner)];
  return toLeft <= toAbove && toLeft <= toCorner ? left : toAbove <= toCorner ? above : corner;
}

/** Red, green and blue of each pixel, row by row. */
function pixelsOf(lines: Buffer, width: number, height: number): Buffer {
  const stride = width * CHANNELS;
  const pixels = Buffer.alloc(stride * height);
  for (let y = 0; y < height; y += 1) {
    const filter = lines[y * (stride + 1)] ?? 0;
    for (let x = 0; x < stride; x += 1) {
      const to = y * stride + x;
      const left = x < CHANNELS ? 0 : (pixels[to - CHANNELS] ?? 0);
      const above = y === 0 ? 0 : (pixels[to - stride] ?? 0);
      const corner = x < CHANNELS || y === 0 ? 0 : (pixels[to - stride - CHANNELS] ?? 0);
      const guess = [0, left, above, (left + above) >> 1, filter === 4 ? paeth(left, above, corner) : 0][filter] ?? 0;
      pixels[to] = ((lines[y * (stride + 1) + 1 + x] ?? 0) + guess) & 255;
    }
  }
  return pixels;
}

function distance(a: number, b: number): number {
  return ((a >> 16) - (b >> 16)) ** 2 + (((a >> 8) & 255) - ((b >> 8) & 255)) ** 2 + ((a & 255) - (b & 255)) ** 2;
}

/** The most frequent colours that differ, most frequent first: flat areas keep theirs exactly. */
function paletteOf(counts: ReadonlyMap<number, number>): number[] {
  const palette: number[] = [];
  for (const [colour] of [...counts].sort((a, b) => b[1] - a[1])) {
    if (palette.length < MOST_COLOURS && palette.every((other) => distance(colour, other) > SAME)) palette.push(colour);
  }
  return palette;
}

/**
 * Packs a PNG of 8-bit red, green and blue, as a browser's screenshot is one, into at most 256 colours.
 * @throws Error for any other kind of PNG
 */
export function packed(png: Buffer): Buffer {
  const chunks = chunksOf(png);
  const head = chunks.find(({ type }) => type === 'IHDR')?.data;
  if (head?.[8] !== 8 || head[9] !== 2 || head[12] !== 0) throw new Error('This is no plain PNG of red, green and blue.');
  const [width, height] = [head.readUInt32BE(0), head.readUInt32BE(4)];
  const pixels = pixelsOf(inflateSync(Buffer.concat(chunks.filter(({ type }) => type === 'IDAT').map(({ data }) => data))), width, height);
  const colourAt = (pixel: number) => pixels.readUIntBE(pixel * CHANNELS, CHANNELS);

  const counts = new Map<number, number>();
  for (let pixel = 0; pixel < width * height; pixel += 1) counts.set(colourAt(pixel), (counts.get(colourAt(pixel)) ?? 0) + 1);
  const palette = paletteOf(counts);
  const nearest = new Map(
    [...counts.keys()].map((colour) => [
      colour,
      palette.reduce((best, other, place) => (distance(colour, other) < distance(colour, palette[best] ?? 0) ? place : best), 0),
    ]),
  );

  const lines = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y += 1) for (let x = 0; x < width; x += 1) lines[y * (width + 1) + 1 + x] = nearest.get(colourAt(y * width + x)) ?? 0;
  const newHead = Buffer.from(head);
  newHead[9] = 3;
  const colours = Buffer.from(palette.flatMap((colour) => [colour >> 16, (colour >> 8) & 255, colour & 255]));
  const parts: Chunk[] = [
    { type: 'IHDR', data: newHead },
    { type: 'PLTE', data: colours },
    { type: 'IDAT', data: deflateSync(lines, { level: 9, memLevel: 9 }) },
    { type: 'IEND', data: Buffer.alloc(0) },
  ];
  return Buffer.concat([png.subarray(0, SIGNATURE_BYTES), ...parts.map(written)]);
}
