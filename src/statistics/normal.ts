import { exp, log } from '../random/elementary.ts';

/** Farther out the smaller tail is below the smallest double. */
const BEYOND = 40;

/**
 * Returns the standard normal probability below z.
 * @param z any number
 * @returns relative error about 1e-15 in both tails; 0 below about −38.5
 *
 * **Source:** Cody, W. J. (1969) Rational Chebyshev approximations for the error function, Math. Comp. 23:631–637, in the normal form of
 * Cody (1993) ACM TOMS 19:22–32 (coefficients from memory, checked against the series in the tests).
 */
export function normalCdf(z: number): number {
  const size = Math.abs(z);
  if (size <= 0.67448975) {
    const s = z * z;
    const top = (((0.065682337918207449113 * s + 2.2352520354606839287) * s + 161.02823106855587881) * s + 1067.6894854603709582) * s + 18154.981253343561249;
    const bottom = (((s + 47.20258190468824187) * s + 976.09855173777669322) * s + 10260.932208618978205) * s + 45507.789335026729956;
    return 0.5 + (z * top) / bottom;
  }
  if (size > BEYOND) return z < 0 ? 0 : 1;
  const tail = size <= Math.sqrt(32) ? middleTail(size) : farTail(size);
  return z < 0 ? tail : 1 - tail;
}

/** exp(−z²/2) with the square split, so that rounding of z² does not grow in the exponent. */
function bell(z: number): number {
  const head = Math.trunc(z * 16) / 16;
  return exp(-0.5 * head * head) * exp(-0.5 * (z - head) * (z + head));
}

function middleTail(z: number): number {
  let top = 1.0765576773720192317e-8 * z;
  top = (top + 0.39894151208813466764) * z;
  top = (top + 8.8831497943883759412) * z;
  top = (top + 93.506656132177855979) * z;
  top = (top + 597.27027639480026226) * z;
  top = (top + 2494.5375852903726711) * z;
  top = (top + 6848.1904505362823326) * z;
  top = (top + 11602.651437647350124) * z;
  top += 9842.7148383839780218;
  let bottom = z;
  bottom = (bottom + 22.266688044328115691) * z;
  bottom = (bottom + 235.38790178262499861) * z;
  bottom = (bottom + 1519.377599407554805) * z;
  bottom = (bottom + 6485.558298266760755) * z;
  bottom = (bottom + 18615.571640885098091) * z;
  bottom = (bottom + 34900.952721145977266) * z;
  bottom = (bottom + 38912.003286093271411) * z;
  bottom += 19685.429676859990727;
  return (bell(z) * top) / bottom;
}

function farTail(z: number): number {
  const s = 1 / (z * z);
  let top = 0.02307344176494017303 * s;
  top = (top + 0.21589853405795699) * s;
  top = (top + 0.1274011611602473639) * s;
  top = (top + 0.022235277870649807) * s;
  top = (top + 0.001421619193227893466) * s;
  top += 2.9112874951168792e-5;
  let bottom = s;
  bottom = (bottom + 1.28426009614491121) * s;
  bottom = (bottom + 0.468238212480865118) * s;
  bottom = (bottom + 0.0659881378689285515) * s;
  bottom = (bottom + 0.00378239633202758244) * s;
  bottom += 7.29751555083966205e-5;
  return (bell(z) * (0.3989422804014327 - (s * top) / bottom)) / z;
}

/**
 * Returns the z below which a standard normal lies with probability p. Allocates nothing.
 * @param p in [0, 1]; 0 gives −Infinity and 1 gives Infinity, outside NaN
 * @returns relative error about 1e-15
 *
 * **Source:** Wichura, M. J. (1988) Algorithm AS 241, PPND16, Applied Statistics 37:477–484 (coefficients from memory, checked in the tests).
 */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) {
    const r = 0.180625 - q * q;
    const top =
      ((((((2.509080928730122672e3 * r + 3.343057558358812811e4) * r + 6.7265770927008700853e4) * r + 4.5921953931549871457e4) * r + 1.3731693765509461125e4) *
        r +
        1.9715909503065514427e3) *
        r +
        1.3314166789178437745e2) *
        r +
      3.387132872796366608;
    const bottom =
      ((((((5.226495278852854561e3 * r + 2.8729085735721942674e4) * r + 3.930789580009271061e4) * r + 2.1213794301586595867e4) * r + 5.3941960214247511077e3) *
        r +
        6.871870074920579083e2) *
        r +
        4.2313330701600911252e1) *
        r +
      1;
    return (q * top) / bottom;
  }
  const tail = q < 0 ? p : 1 - p;
  if (!(tail > 0)) return tail === 0 ? (q < 0 ? -Infinity : Infinity) : NaN;
  const root = Math.sqrt(-log(tail));
  const z = root <= 5 ? nearQuantile(root - 1.6) : farQuantile(root - 5);
  return q < 0 ? -z : z;
}

function nearQuantile(r: number): number {
  const top =
    ((((((7.7454501427834140764e-4 * r + 2.27238449892691845833e-2) * r + 2.4178072517745061177e-1) * r + 1.27045825245236838258) * r +
      3.64784832476320460504) *
      r +
      5.7694972214606914055) *
      r +
      4.6303378461565452959) *
      r +
    1.42343711074968357734;
  const bottom =
    ((((((1.05075007164441684324e-9 * r + 5.475938084995344946e-4) * r + 1.51986665636164571966e-2) * r + 1.4810397642748007459e-1) * r +
      6.8976733498510000455e-1) *
      r +
      1.6763848301838038494) *
      r +
      2.05319162663775882187) *
      r +
    1;
  return top / bottom;
}

function farQuantile(r: number): number {
  const top =
    ((((((2.01033439929228813265e-7 * r + 2.71155556874348757815e-5) * r + 1.2426609473880784386e-3) * r + 2.6532189526576123093e-2) * r +
      2.9656057182850489123e-1) *
      r +
      1.7848265399172913358) *
      r +
      5.4637849111641143699) *
      r +
    6.6579046435011037772;
  const bottom =
    ((((((2.04426310338993978564e-15 * r + 1.4215117583164458887e-7) * r + 1.8463183175100546818e-5) * r + 7.868691311456132591e-4) * r +
      1.48753612908506148525e-2) *
      r +
      1.3692988092273580531e-1) *
      r +
      5.9983220655588793769e-1) *
      r +
    1;
  return top / bottom;
}
