/** A colour as sRGB, each channel 0–1. */
export type Rgb = readonly [number, number, number];

/** Parses “#rgb” and “#rrggbb”. */
export function hex(text: string): Rgb {
  const digits = /^#([\da-f]{6}|[\da-f]{3})$/i.exec(text)?.[1];
  if (digits === undefined) throw new RangeError(`No colour: ${text}`);
  const pairs = digits.length === 3 ? Array.from(digits, (digit) => digit + digit) : [digits.slice(0, 2), digits.slice(2, 4), digits.slice(4)];
  const [r = 0, g = 0, b = 0] = pairs.map((pair) => parseInt(pair, 16) / 255);
  return [r, g, b];
}

// CSS Color Module Level 4, “sample code for color conversions”: sRGB transfer function, and OKLab by B. Ottosson (2020); figures from memory.
const linear = (c: number): number => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4);
const curved = (c: number): number => (c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055);
const within = (c: number): number => Math.min(1, Math.max(0, c));

function toOklab(colour: Rgb): Rgb {
  const [r, g, b] = [linear(colour[0]), linear(colour[1]), linear(colour[2])];
  const l = Math.cbrt(0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  const m = Math.cbrt(0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  const s = Math.cbrt(0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return [
    0.2104542553 * l + 0.793617785 * m - 0.0040720468 * s,
    1.9779984951 * l - 2.428592205 * m + 0.4505937099 * s,
    0.0259040371 * l + 0.7827717662 * m - 0.808675766 * s,
  ];
}

function fromOklab([light, a, b]: Rgb): Rgb {
  const l = (light + 0.3963377774 * a + 0.2158037573 * b) ** 3;
  const m = (light - 0.1055613458 * a - 0.0638541728 * b) ** 3;
  const s = (light - 0.0894841775 * a - 1.291485548 * b) ** 3;
  return [
    within(curved(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s)),
    within(curved(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s)),
    within(curved(-0.0041960863 * l - 0.7034186147 * m + 1.707614701 * s)),
  ];
}

/** What `color-mix(in oklab, one share, other)` gives. */
export function mixed(one: Rgb, share: number, other: Rgb): Rgb {
  const [a, b] = [toOklab(one), toOklab(other)];
  return fromOklab([a[0] * share + b[0] * (1 - share), a[1] * share + b[1] * (1 - share), a[2] * share + b[2] * (1 - share)]);
}

/** Contrast of two colours, 1–21. **Source:** WCAG 2.2, definitions of “relative luminance” and “contrast ratio”. */
export function contrast(one: Rgb, other: Rgb): number {
  const [a, b] = [one, other].map(([r, g, b]) => 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b)).sort((x, y) => y - x);
  return ((a ?? 0) + 0.05) / ((b ?? 0) + 0.05);
}

/** How two colours differ: their distance in OKLab, in hundredths. */
export function distance(one: Rgb, other: Rgb): number {
  const [a, b] = [toOklab(one), toOklab(other)];
  return 100 * Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/** How a colour is seen. Figures at full severity, on linear sRGB. **Source:** Machado, Oliveira & Fernandes 2009 (IEEE TVCG 15:1291–1298); figures from memory. */
export const SIGHT = {
  protanopia: [0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998],
  deuteranopia: [0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881],
  tritanopia: [1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039],
} as const;
export type Sight = keyof typeof SIGHT;

export function seenBy(sight: Sight, colour: Rgb): Rgb {
  const [r, g, b] = [linear(colour[0]), linear(colour[1]), linear(colour[2])];
  const row = (i: number) => within(curved(within((SIGHT[sight][i] ?? 0) * r + (SIGHT[sight][i + 1] ?? 0) * g + (SIGHT[sight][i + 2] ?? 0) * b)));
  return [row(0), row(3), row(6)];
}
