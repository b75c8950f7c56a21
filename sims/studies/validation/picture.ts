/** Bars of how many errors the sampled figures lie off, under the curve that luck alone would give. Plain SVG, no script, no fonts of its own. */
export function picture(zs: readonly number[]): string {
  const [width, height, left, bottom, top] = [640, 240, 30, 40, 16];
  const [step, most] = [0.5, 4];
  const x = (z: number): number => left + ((z + most) / (2 * most)) * (width - 2 * left);
  const bins = Array.from({ length: (2 * most) / step }, (_, i) => zs.filter((z) => Math.floor((z + most) / step) === i).length);
  const bell = (z: number): number => (zs.length * step * Math.exp(-0.5 * z * z)) / Math.sqrt(2 * Math.PI);
  const highest = Math.max(bell(0), ...bins);
  const y = (n: number): number => height - bottom - (n / highest) * (height - bottom - top);
  const say = (value: number): string => value.toFixed(1);
  const bars = bins.map((n, i) => {
    const from = x(i * step - most);
    return `<rect x="${say(from + 1)}" y="${say(y(n))}" width="${say(x(step) - x(0) - 2)}" height="${say(height - bottom - y(n))}" fill="#7c9a5e"/>`;
  });
  const curve = Array.from({ length: 81 }, (_, i) => i / 10 - most).map((z) => `${say(x(z))},${say(y(bell(z)))}`);
  const marks = Array.from({ length: 2 * most + 1 }, (_, i) => i - most).map(
    (z) => `<text x="${say(x(z))}" y="${String(height - bottom + 16)}" text-anchor="middle">${String(z).replace('-', '−')}</text>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${String(width)} ${String(height)}" width="${String(width)}" height="${String(height)}" role="img" font-family="sans-serif" font-size="12">`,
    `<title>${String(zs.length)} sampled figures: standard errors off the published value, and the normal curve</title>`,
    `<rect width="${String(width)}" height="${String(height)}" fill="#fffdf6"/>`,
    ...bars,
    `<polyline points="${curve.join(' ')}" fill="none" stroke="#7a2e1d" stroke-width="2"/>`,
    `<line x1="${String(left)}" x2="${String(width - left)}" y1="${String(height - bottom)}" y2="${String(height - bottom)}" stroke="#3b3a33"/>`,
    `<g fill="#3b3a33">`,
    ...marks,
    `<text x="${String(width / 2)}" y="${String(height - 6)}" text-anchor="middle">standard errors off the published value</text>`,
    `</g>`,
    `</svg>`,
    '',
  ].join('\n');
}
