import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { share, type Estimate } from '../../src/model/estimate.ts';
import { printEstimate } from '../../src/model/estimate-forms.ts';
import type { Scale } from '../../src/model/fields.ts';
import { printNumber } from '../../src/model/numbers.ts';
import { readTyped, settleTyped, valuesIn, type TypedReading, type Understood } from '../../src/model/typed-estimate.ts';

const ESTIMATE = share({ label: 'Any' });

/** A reading in few letters: “6..8..10”, “18 of 240”, “20|50”, or both readings, or why there is none. */
function brief(reading: TypedReading): string {
  const one = ({ kind, estimate }: Understood): string => {
    if (kind === 'number') return String(estimate);
    if (kind === 'count')
      return `${String(estimate.hits)} of ${String(estimate.of)}${estimate.unit ? ` ${estimate.unit.name} ${String(estimate.unit.flowers)}` : ''}`;
    if (kind === 'either') return estimate.oneOf.map(({ value }) => value).join('|');
    return `${kind === 'range' ? '' : `${kind} `}${[estimate.low, estimate.likely, estimate.high].join('..')}`;
  };
  if (reading.ok) return one(reading.understood);
  return reading.reason === 'ambiguous' ? `? ${reading.readings.map(one).join(' or ')}` : reading.reason;
}

/** What people type, by scale; the unit of the field is “years”. Worked by hand from the rules in the docstring of `readTyped`. */
const TABLE: readonly (readonly [Scale, string, string])[] = [
  // One number.
  ['number', '8', '8'],
  ['number', '8,5', '8.5'],
  ['number', '8.5 years', '8.5'],
  ['number', '8 year', '8'],
  ['number', '-5', '-5'],
  ['number', '−5', '-5'],
  ['number', '1 200', '1200'],
  ['number', '1\u202f200', '1200'],
  ['number', '1,234,567', '1234567'],
  ['number', '1.234,5', '1234.5'],
  ['number', '1,234.5', '1234.5'],
  ['share', '8 %', '0.08'],
  ['share', '8%', '0.08'],
  ['share', '95.500', '0.955'],
  ['share', '7 in 10', '0.7'],
  ['share', '7 times in 10', '0.7'],
  // Two readings.
  ['number', '10.000', '? 10 or 10000'],
  ['number', '1,500', '? 1.5 or 1500'],
  ['number', '1,500-2,500', '? 1.5..2..2.5 or 1500..2000..2500'],
  ['number', '> 1.500', '? atLeast 1.5..1.8..2.1 or atLeast 1500..1800..2100'],
  ['number', 'about 2,000', '? about 1.6..2..2.4 or about 1600..2000..2400'],
  ['number', '1.500 or 2.500', '? 1.5|2.5 or 1500|2500'],
  ['share', '10.000 of 20.000', '? 10 of 20 or 10000 of 20000'],
  // One of the two makes no sense.
  ['number', '500-1.500', '500..1000..1500'],
  ['share', '1.500 of 3,200', '1500 of 3200'],
  ['share', '18 of 1,200', '18 of 1200'],
  // Ranges.
  ['number', '6–10', '6..8..10'],
  ['number', '6-10', '6..8..10'],
  ['number', '6 - 10', '6..8..10'],
  ['number', '6—10', '6..8..10'],
  ['number', '6−10', '6..8..10'],
  ['number', '6 to 10', '6..8..10'],
  ['number', '6 TO 10 years', '6..8..10'],
  ['number', '6 years to 10 years', '6..8..10'],
  ['number', 'between 6 and 10', '6..8..10'],
  ['number', 'from 6 to 10', '6..8..10'],
  ['number', '6–8–10', '6..8..10'],
  ['number', '6 to 7 to 10', '6..7..10'],
  ['number', '2,5–3,5', '2.5..3..3.5'],
  ['number', '10 000 to 20 000', '10000..15000..20000'],
  ['number', '-8--5', '-8..-6.5..-5'],
  ['number', '-8 to -5', '-8..-6.5..-5'],
  ['number', '-5-8', '-5..1.5..8'],
  ['number', '5-8', '5..6.5..8'],
  ['number', '-5–8', '-5..1.5..8'],
  ['number', '6–6', '6..6..6'],
  ['share', '6–10 %', '0.06..0.08..0.1'],
  ['share', '6 % to 10 %', '0.06..0.08..0.1'],
  ['number', 'about 6–10', '6..8..10'],
  // Counts.
  ['share', '18 of 240', '18 of 240'],
  ['share', '18/240', '18 of 240'],
  ['share', '18 / 240', '18 of 240'],
  ['share', '18 out of 240', '18 of 240'],
  ['share', '0 of 20', '0 of 20'],
  ['share', '0.5 of 20', '0.5 of 20'],
  ['share', 'about 18 of 240', '18 of 240'],
  ['share', '18 of 240 clusters of 5', '18 of 240 cluster 5'],
  // Vague.
  ['number', 'about 8', 'about 6.4..8..9.6'],
  ['number', '~8', 'about 6.4..8..9.6'],
  ['number', '~ 8 years', 'about 6.4..8..9.6'],
  ['number', 'ca. 8', 'about 6.4..8..9.6'],
  ['number', 'Ca 8', 'about 6.4..8..9.6'],
  ['number', 'c. 8', 'about 6.4..8..9.6'],
  ['number', 'approximately 8', 'about 6.4..8..9.6'],
  ['number', 'about -10', 'about -12..-10..-8'],
  ['number', 'about 0', 'about -1..0..1'],
  ['share', 'about 8 %', 'about 0.064..0.08..0.096'],
  ['share', 'about 90', 'about 0.85..0.9..0.95'],
  ['share', 'about 100', 'about 0.95..1..1'],
  ['number', '> 12', 'atLeast 12..14.4..16.8'],
  ['number', '>12', 'atLeast 12..14.4..16.8'],
  ['number', '≥ 12', 'atLeast 12..14.4..16.8'],
  ['number', 'at least 12', 'atLeast 12..14.4..16.8'],
  ['number', 'more than 12 years', 'atLeast 12..14.4..16.8'],
  ['number', '12+', 'atLeast 12..14.4..16.8'],
  ['number', '12 or more', 'atLeast 12..14.4..16.8'],
  ['number', 'from 12', 'atLeast 12..14.4..16.8'],
  ['share', 'at least 90 %', 'atLeast 0.9..0.95..1'],
  ['number', '< 10', 'atMost 6..8..10'],
  ['number', 'up to 10', 'atMost 6..8..10'],
  ['number', '10 or less', 'atMost 6..8..10'],
  // Alternatives.
  ['number', '20 or 50', '20|50'],
  ['number', 'either 20 or 50 or 80', '20|50|80'],
  // Not, or not yet.
  ['number', '', 'empty'],
  ['number', '10–6', 'downwards'],
  ['number', '6–12–10', 'downwards'],
  ['number', '5--8', 'downwards'],
  ['share', '240 of 18', 'more than all'],
  ['share', '1/0', 'more than all'],
  ['number', '8 %', 'percent'],
  ['number', '6–10 %', 'percent'],
  ['number', '6 –', 'unfinished'],
  ['number', 'betw', 'unfinished'],
  ['number', 'between 6 and', 'unfinished'],
  ['number', 'abo', 'unfinished'],
  ['share', '18/', 'unfinished'],
  ['share', '18 out', 'unfinished'],
  ['number', '8 ye', 'unfinished'],
  ['number', '6 and 10', 'not a number'],
  ['number', 'eight', 'not a number'],
  ['number', '8 months', 'not a number'],
  ['number', 'overall 8', 'not a number'],
  ['number', '1 2', 'not a number'],
  ['number', '1e3', 'not a number'],
  ['number', '--5', 'not a number'],
  ['number', '1–2–3–4', 'not a number'],
  ['share', '18 % of 240', 'not a number'],
  ['share', '-1 of 20', 'not a number'],
];

describe('an estimate as people type it', () => {
  it.each(TABLE)('%s: %j is %s', (scale, text, expected) => expect(brief(readTyped(text, scale, scale === 'share' ? [] : ['years']))).toBe(expected));

  it('has at least sixty texts to go by, each of them once', () => {
    expect(new Set(TABLE.map(([scale, text]) => `${scale} ${text}`)).size).toBe(TABLE.length);
    expect(TABLE.length).toBeGreaterThanOrEqual(60);
  });

  it('never takes an ambiguous text for either of its readings', () => {
    const lead = fc.constantFrom('', 'about ', '> ', '~', 'at most ', '≥');
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 999 }), fc.integer({ min: 0, max: 999 }), fc.constantFrom('.', ','), lead, (whole, three, mark, before) => {
        const text = `${before}${String(whole)}${mark}${String(three).padStart(3, '0')}`;
        const reading = readTyped(text);
        if (reading.ok || reading.reason !== 'ambiguous') throw new Error(`${text} was taken`);
        const typed = reading.readings.map(
          (each) => valuesIn(each)[before === '' ? 0 : before === 'at most ' ? 2 : before === 'about ' || before === '~' ? 1 : 0],
        );
        expect(typed).toEqual([whole + three / 1000, 1000 * whole + three].map((value) => Number(value.toPrecision(12))));
      }),
      { numRuns: 2000 },
    );
  });
});

/** Doubles of full length, but none of the kind that takes three hundred noughts to print. */
const percent = fc.double({ min: 0, max: 1, noNaN: true }).map((each) => (each < 1e-9 ? 0 : each));
const value = fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((each) => (Math.abs(each) < 1e-9 ? 0 : each));
const ranged = (each: fc.Arbitrary<number>): fc.Arbitrary<Estimate> =>
  fc.tuple(each, each, each).map((three) => {
    const [low = 0, likely = 0, high = 0] = three.toSorted((a, b) => a - b);
    return { low, likely, high };
  });
const counted: fc.Arbitrary<Estimate> = fc
  .tuple(fc.integer({ min: 1, max: 5000 }), percent, fc.option(fc.integer({ min: 1, max: 1000 })))
  .map(([of, part, flowers]) => ({ hits: Math.floor(of * part), of, lots: 1, ...(flowers === null ? {} : { unit: { name: 'cluster', flowers } }) }));
const either = (each: fc.Arbitrary<number>): fc.Arbitrary<Estimate> =>
  fc.array(each, { minLength: 2, maxLength: 12 }).map((values) => ({ oneOf: values.map((one) => ({ value: one, weight: 1 })) }));
const any = (each: fc.Arbitrary<number>, scale: Scale): fc.Arbitrary<readonly [Estimate, Scale]> =>
  fc.oneof(each, ranged(each), counted, either(each)).map((estimate) => [estimate, scale] as const);

describe('an estimate in print', () => {
  it('reads back as itself in every form', () => {
    fc.assert(
      fc.property(fc.oneof(any(value, 'number'), any(percent, 'share'), any(value, 'months')), ([estimate, scale]) => {
        const text = printEstimate(estimate, scale);
        const reading = readTyped(text, scale);
        if (!reading.ok) throw new Error(`“${text}”: ${reading.reason}`);
        expect(reading.understood.estimate).toEqual(estimate);
      }),
      { numRuns: 4000 },
    );
  });

  it('says of every understood text the same as the text did', () => {
    const texts = TABLE.flatMap(([scale, text]) => {
      const reading = readTyped(text, scale, scale === 'share' ? [] : ['years']);
      if (reading.ok) return [[scale, text, reading.understood] as const];
      return reading.reason === 'ambiguous' ? reading.readings.map((each) => [scale, text, each] as const) : [];
    });
    expect(texts.length).toBeGreaterThan(60);
    for (const [scale, text, { estimate }] of texts) {
      const again = readTyped(printEstimate(ESTIMATE.safeParse(estimate).data ?? (estimate as Estimate), scale), scale);
      expect(again.ok && again.understood.estimate, text).toEqual(estimate);
    }
  });

  it('is a range whichever dash stands in it, and two dashes are a dash and a minus', () => {
    const [low, high] = [fc.integer({ min: -500, max: 500 }), fc.integer({ min: 0, max: 500 })];
    fc.assert(
      fc.property(low, high, fc.constantFrom('-', '–', '—', '−', ' - ', ' to '), (from, more, dash) => {
        const text = `${printNumber(from)}${dash}${printNumber(from + more)}`;
        const reading = readTyped(text);
        expect(reading.ok && reading.understood).toMatchObject({ kind: 'range', estimate: { low: from, high: from + more } });
      }),
    );
  });
});

it('gives up on endless text at once', () => {
  for (const text of ['1'.repeat(500), '1 '.repeat(250), '1 or '.repeat(100), `${'1 - '.repeat(120)}x`, '1'.repeat(1e6)]) {
    const start = performance.now();
    readTyped(text);
    expect(performance.now() - start, text.slice(0, 9)).toBeLessThan(250);
  }
});

describe('the bounds of a field', () => {
  const settled = (text: string, min: number, max: number, whole = false): string => brief(settleTyped(readTyped(text), { min, max, whole }));
  it('settle what can be read in two ways, and only where one of them is allowed', () => {
    expect(settled('1,500', 0, 1e6, true)).toBe('1500');
    expect(settled('10.000', 0, 24)).toBe('10');
    expect(settled('10.000', 0, 1e6, true)).toBe('? 10 or 10000');
    expect(settled('1,500', 5000, 6000)).toBe('? 1.5 or 1500');
    expect(settled('1,500–2,500', 100, 1e6)).toBe('1500..2000..2500');
    expect(settled('nine', 0, 10)).toBe('not a number');
  });
  it('hold back the ends that nobody typed, and never the number that somebody did', () => {
    expect(settled('about 1', 1, 60)).toBe('about 1..1..1.2');
    expect(settled('at least 55', 1, 60)).toBe('atLeast 55..60..60');
    expect(settled('at most 1', 1, 60)).toBe('atMost 1..1..1');
    expect(settled('about 100', 1, 60)).toBe('about 80..100..120');
  });
});
