import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clip, roughMeasure, wrap } from '../../src/charts/measure.ts';
import { spread } from '../../src/charts/spread.ts';

describe('wrapping and clipping', () => {
  it('keeps every word in order and every line within the room, but for single long words', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1, maxLength: 20 }), fc.integer({ min: 30, max: 400 }), (words, room) => {
        const lines = wrap(words.join(' '), room, 16, roughMeasure);
        expect(lines.join(' ')).toBe(words.join(' '));
        for (const line of lines) if (line.includes(' ')) expect(roughMeasure(line, 16)).toBeLessThanOrEqual(room);
      }),
    );
  });

  it('clips only what does not fit', () => {
    expect(clip('Rescue graft', 500, 17, roughMeasure)).toBe('Rescue graft');
    const short = clip('Controlled cross, then brother × sister', 100, 17, roughMeasure);
    expect(short.endsWith('…')).toBe(true);
    expect(roughMeasure(short, 17)).toBeLessThanOrEqual(100);
  });
});

describe('spreading labels', () => {
  const boxes = fc.array(fc.record({ at: fc.integer({ min: 0, max: 400 }), height: fc.integer({ min: 10, max: 40 }) }), { minLength: 1, maxLength: 8 });

  it('never lets two overlap and never leaves the room when there is enough of it', () => {
    fc.assert(
      fc.property(boxes, (list) => {
        const middles = spread(list, -10, 410);
        const placed = list
          .map(({ height }, index) => ({ top: middles[index]! - height / 2, bottom: middles[index]! + height / 2 }))
          .sort((a, b) => a.top - b.top);
        placed.forEach((box, index) => {
          const next = placed[index + 1];
          if (next) expect(next.top).toBeGreaterThanOrEqual(box.bottom - 1e-9);
          expect(box.top).toBeGreaterThanOrEqual(-10 - 1e-9);
          expect(box.bottom).toBeLessThanOrEqual(410 + 1e-9);
        });
      }),
    );
  });

  it('leaves labels alone that do not touch', () => {
    expect(
      spread(
        [
          { at: 300, height: 40 },
          { at: 20, height: 40 },
          { at: 100, height: 40 },
        ],
        0,
        400,
      ),
    ).toEqual([300, 20, 100]);
  });

  it('is the nearest of all: no other order-keeping placement has a smaller sum of squared moves (checked on a grid of placements)', () => {
    const list = [
      { at: 100, height: 40 },
      { at: 110, height: 40 },
      { at: 170, height: 40 },
    ];
    const cost = (places: readonly number[]) => places.reduce((sum, place, index) => sum + (place - list[index]!.at) ** 2, 0);
    const found = cost(spread(list, 0, 400));
    let best = Infinity;
    for (let a = 20; a <= 380; a += 1) for (let b = a + 40; b <= 380; b += 1) for (let c = b + 40; c <= 380; c += 1) best = Math.min(best, cost([a, b, c]));
    // The grid of whole px can be at most half a px off in each of three places: three times the largest gradient step.
    expect(found).toBeLessThanOrEqual(best + 1e-9);
    expect(best - found).toBeLessThan(3 * 0.25 + 1e-9);
  });
});
