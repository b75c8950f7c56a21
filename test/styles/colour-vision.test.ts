import { describe, expect, it } from 'vitest';
import { distance, hex, seenBy, SIGHT, type Rgb, type Sight } from './colours.ts';
import { THEMES, token } from './tokens.ts';

const PLANS = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'] as const;
const SIGHTS = ['full', ...(Object.keys(SIGHT) as Sight[])] as const;
/** Distance in OKLab, in hundredths, that two plans keep: our own bound, since colour never stands alone (letter, dash and name go with it). The four solid ones keep more. */
const [ALL, SOLID] = [8, 9];

const look = (sight: Sight | 'full', colour: Rgb): Rgb => (sight === 'full' ? colour : seenBy(sight, colour));

/** Every pair of plans that comes nearer than the bound. */
function tooNear(theme: (typeof THEMES)[number], sight: (typeof SIGHTS)[number]): readonly string[] {
  const seen = PLANS.map((plan) => look(sight, token(`plan-${plan}`, theme)));
  return PLANS.flatMap((one, i) =>
    PLANS.slice(0, i).flatMap((other, j) => {
      const [a, b] = [seen[i], seen[j]];
      const apart = a && b ? distance(a, b) : 0;
      return apart < (i < 4 ? SOLID : ALL) ? [`${other}–${one} ${apart.toFixed(1)}`] : [];
    }),
  );
}

describe.each(THEMES)('the colours of the plans in the %s theme', (theme) => {
  it.each(SIGHTS)('are told apart with %s colour vision', (sight) => {
    expect(tooNear(theme, sight)).toEqual([]);
  });
});

describe('the reckoning of colour vision', () => {
  it.each(Object.keys(SIGHT) as Sight[])('leaves white, grey and black as they are: %s', (sight) => {
    for (const grey of ['#ffffff', '#808080', '#000000']) expect(distance(seenBy(sight, hex(grey)), hex(grey))).toBeLessThan(0.1);
  });

  it('brings together what is known to be taken for each other', () => {
    // A leaf green and a brick red for who lacks long or middle cones; blue and green for who lacks short ones: common knowledge, no source.
    const near = (sight: Sight, one: string, other: string) => distance(seenBy(sight, hex(one)), seenBy(sight, hex(other))) / distance(hex(one), hex(other));
    expect(near('deuteranopia', '#7f8f2f', '#c0702f')).toBeLessThan(0.5);
    expect(near('protanopia', '#6f8f2f', '#b0802f')).toBeLessThan(0.5);
    expect(near('tritanopia', '#2f8fc0', '#2f9f8f')).toBeLessThan(0.5);
    expect(near('tritanopia', '#7f8f2f', '#c0702f')).toBeGreaterThan(0.5);
  });
});
