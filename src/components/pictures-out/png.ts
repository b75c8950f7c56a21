/** Dots of print, to an inch and to a millimetre. */
export const DOTS_AN_INCH = 300;
export const MM_AN_INCH = 25.4;

const CRC = Uint32Array.from({ length: 256 }, (_, n) => Array.from({ length: 8 }).reduce<number>((c) => (c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1), n));
const crc = (bytes: Uint8Array): number => (bytes.reduce((sum, byte) => (CRC[(sum ^ byte) & 255] ?? 0) ^ (sum >>> 8), 0xffffffff) ^ 0xffffffff) >>> 0;

/** Signature and IHDR, which always comes first: 8 bytes, and 4 + 4 + 13 + 4. */
const AFTER_HEADER = 33;

/**
 * Says in a PNG how large it is in print.
 *
 * **Source:** W3C, Portable Network Graphics (3rd ed.), 5.3 and 11.3.4.3: `pHYs`, dots a metre, and the CRC of 5.5.
 */
export function withPrintSize(blob: Blob, dotsAnInch = DOTS_AN_INCH): Blob {
  const dots = Math.round((dotsAnInch / MM_AN_INCH) * 1000);
  const chunk = new DataView(new ArrayBuffer(21));
  chunk.setUint32(0, 9);
  new TextEncoder().encodeInto('pHYs', new Uint8Array(chunk.buffer, 4));
  chunk.setUint32(8, dots);
  chunk.setUint32(12, dots);
  chunk.setUint8(16, 1);
  chunk.setUint32(17, crc(new Uint8Array(chunk.buffer, 4, 13)));
  return new Blob([blob.slice(0, AFTER_HEADER), chunk.buffer, blob.slice(AFTER_HEADER)], { type: 'image/png' });
}

/**
 * Paints a drawing as a PNG.
 * @param svg with its width and height in dots
 * @throws Error where the browser does not paint it
 */
export async function painted(svg: string, width: number, height: number): Promise<Blob> {
  const image = new Image();
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = height;
    const brush = canvas.getContext('2d');
    if (!brush) throw new Error('This browser does not paint.');
    brush.drawImage(image, 0, 0, width, height);
    return await new Promise((resolve, reject) =>
      canvas.toBlob((blob) => {
        if (blob) resolve(blob);
        else reject(new Error('This browser does not paint.'));
      }, 'image/png'),
    );
  } finally {
    URL.revokeObjectURL(address);
  }
}
