import type { Letter } from './letter.ts';

/** Pushes letters apart that would cover each other, in a few rounds; they stay as near to their place as that allows. */
export function apart(letters: readonly Letter[]): Letter[] {
  let moved = letters.map((letter) => ({ ...letter }));
  for (let turn = 0; turn < 24; turn++) {
    moved = moved.map((one, i) => {
      const pushes = moved.flatMap((other, j) => {
        const [dx, dy] = [one.x - other.x, one.y - other.y];
        const distance = Math.hypot(dx, dy);
        const wanted = one.r + other.r + 2;
        if (i === j || distance >= wanted) return [];
        const angle = distance === 0 ? (2 * Math.PI * i) / moved.length : Math.atan2(dy, dx);
        return [{ x: (Math.cos(angle) * (wanted - distance)) / 2, y: (Math.sin(angle) * (wanted - distance)) / 2 }];
      });
      return { ...one, x: one.x + pushes.reduce((sum, push) => sum + push.x, 0), y: one.y + pushes.reduce((sum, push) => sum + push.y, 0) };
    });
  }
  return moved;
}
