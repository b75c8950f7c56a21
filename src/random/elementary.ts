/**
 * exp, log and whole powers from additions, multiplications and divisions alone. ECMAScript leaves the last digit of
 * Math.exp, Math.log and Math.pow to the browser; these give the same bytes everywhere, which the runs promise.
 */

const LN2_HIGH = 0.6931471803691238; // upper bits of ln 2, so that k·LN2_HIGH is exact for |k| < 2¹¹
const LN2_LOW = 1.9082149292705877e-10;
const view = new DataView(new ArrayBuffer(8));

/** Natural logarithm. x > 0 finite, else NaN or −Infinity as Math.log. Relative error below 1e-15. **Source:** atanh series, own derivation. */
export function log(x: number): number {
  if (!(x > 0) || x === Infinity) return x === 0 ? -Infinity : x === Infinity ? Infinity : NaN;
  let exponent = 0;
  if (x < 2.2250738585072014e-308) {
    x *= 18014398509481984; // 2⁵⁴
    exponent = -54;
  }
  view.setFloat64(0, x);
  const high = view.getInt32(0);
  exponent += (high >> 20) - 1023;
  view.setInt32(0, (high & 0x000fffff) | 0x3ff00000);
  let m = view.getFloat64(0);
  if (m > 1.4142135623730951) {
    m *= 0.5;
    exponent += 1;
  }
  const s = (m - 1) / (m + 1);
  const z = s * s;
  // 2·(s + s³/3 + s⁵/5 …), |s| ≤ 0.1716
  const tail =
    z * (1 / 3 + z * (1 / 5 + z * (1 / 7 + z * (1 / 9 + z * (1 / 11 + z * (1 / 13 + z * (1 / 15 + z * (1 / 17 + z * (1 / 19 + z * (1 / 21 + z / 23))))))))));
  return exponent * LN2_HIGH + (2 * s + (2 * s * tail + exponent * LN2_LOW));
}

/** e^x. Overflows to Infinity above 709.78, underflows to 0 below −745. Relative error below 1e-15. **Source:** Taylor series after reduction by ln 2. */
export function exp(x: number): number {
  if (x > 709.782712893384) return Infinity;
  if (!(x > -745.2)) return x === x ? 0 : NaN;
  const k = Math.round(x * 1.4426950408889634);
  const r = x - k * LN2_HIGH - k * LN2_LOW;
  let sum = 1;
  for (let i = 14; i >= 1; i -= 1) sum = 1 + (r / i) * sum;
  if (k > -1021 && k < 1024) {
    view.setInt32(0, (k + 1023) << 20);
    view.setInt32(4, 0);
    return sum * view.getFloat64(0);
  }
  const half = k >> 1;
  return sum * powerOfTwo(half) * powerOfTwo(k - half);
}

function powerOfTwo(k: number): number {
  view.setInt32(0, (k + 1023) << 20);
  view.setInt32(4, 0);
  return view.getFloat64(0);
}

/** x^y for x ≥ 0. */
export function power(x: number, y: number): number {
  return x === 0 ? (y === 0 ? 1 : 0) : exp(y * log(x));
}

/** x^n for a whole n ≥ 0, by squaring. */
export function wholePower(x: number, n: number): number {
  let result = 1;
  for (let k = n, base = x; k > 0; k = Math.floor(k / 2)) {
    if (k % 2 === 1) result *= base;
    base *= base;
  }
  return result;
}
