/** A part of a picture that something takes up, px. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export const boxAt = (x: number, y: number, width: number, height: number): Box => ({ left: x, top: y, right: x + width, bottom: y + height });

/** Distance between two boxes, px; negative by how far they cover each other. */
export function gap(a: Box, b: Box): number {
  const across = Math.max(a.left - b.right, b.left - a.right);
  const down = Math.max(a.top - b.bottom, b.top - a.bottom);
  return across > 0 && down > 0 ? Math.hypot(across, down) : Math.max(across, down);
}

/** Distance of a box from the edges of the one it lies in; negative where it sticks out. */
export const inset = (box: Box, outer: Box): number => Math.min(box.left - outer.left, box.top - outer.top, outer.right - box.right, outer.bottom - box.bottom);
