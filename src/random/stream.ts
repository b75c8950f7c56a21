import seedrandom from 'seedrandom';
import { mix, mix2 } from './mix.ts';

/** Root state of all streams of a shuffle word: four 32-bit words. */
export function rootOf(word: string): Int32Array {
  const source = seedrandom.alea(word);
  return Int32Array.from({ length: 4 }, () => source.int32());
}

const TO_UNIT = 1 / 4294967296;

/**
 * A stream of random numbers, re-keyed in place: `future(domain, run)` once per run, then `key(k)` before each stage.
 * Generator: sfc32, four 32-bit words, add/xor/shift. **Source:** C. Doty-Humphrey, PractRand (public domain), from memory.
 * An Int32Array keeps the words unboxed: about 3 ns a number.
 */
export class Stream {
  private readonly s = new Int32Array(4);
  private readonly base = new Int32Array(4);

  constructor(private readonly root: Int32Array) {}

  /** Chooses the future. Domain keeps facts apart from luck, and the headline pass from the second pass. */
  future(domain: number, run: number): this {
    const { base, root } = this;
    for (let i = 0; i < 4; i += 1) base[i] = mix2((root[i] ?? 0) + Math.imul(domain, 0x632be5ab), run + Math.imul(i, 0x3c6ef372));
    return this;
  }

  /** Starts the stream of one purpose within the future. */
  key(k: number): this {
    const { s, base } = this;
    s[0] = mix(base[0]! + Math.imul(k, 0x9e3779b1));
    s[1] = mix(base[1]! ^ Math.imul(k, 0x85ebca77));
    s[2] = mix(base[2]! + Math.imul(k, 0xc2b2ae3d));
    s[3] = base[3]! ^ k;
    this.bits();
    this.bits();
    this.bits();
    this.bits();
    return this;
  }

  /** 32 random bits, as a signed integer. */
  bits(): number {
    const s = this.s;
    const a = s[0]!;
    const b = s[1]!;
    const c = s[2]!;
    const d = s[3]!;
    const t = (((a + b) | 0) + d) | 0;
    s[3] = (d + 1) | 0;
    s[0] = b ^ (b >>> 9);
    s[1] = (c + (c << 3)) | 0;
    s[2] = (((c << 21) | (c >>> 11)) + t) | 0;
    return t;
  }

  /** Uniform in (0, 1), never 0 or 1; steps of 2⁻³². */
  uniform(): number {
    return ((this.bits() >>> 0) + 0.5) * TO_UNIT;
  }

  /** Uniform in (0, 1) with 53 bits: for sums over long tables. */
  fineUniform(): number {
    return ((this.bits() >>> 0) + ((this.bits() >>> 6) + 0.5) / 67108864) * TO_UNIT;
  }
}
