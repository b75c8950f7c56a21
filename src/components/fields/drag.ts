/** As far as the pointer goes for one step. */
const PIXELS_A_STEP = 8;

/**
 * Makes a handler of `pointerdown` that turns a drag to the right or left into steps of a number; with Shift ten times as far.
 * The keys and the box do the same without dragging.
 */
export function dragSteps(onSteps: (steps: number) => void): (event: PointerEvent) => void {
  return (down) => {
    const label = down.currentTarget;
    if (!(label instanceof HTMLElement) || down.button !== 0) return;
    let from = down.clientX;
    const onMove = (move: PointerEvent): void => {
      const steps = Math.trunc((move.clientX - from) / PIXELS_A_STEP);
      if (steps === 0) return;
      from += steps * PIXELS_A_STEP;
      onSteps(steps * (move.shiftKey ? 10 : 1));
    };
    const stop = (): void => {
      label.removeEventListener('pointermove', onMove);
      label.removeEventListener('pointerup', stop);
      label.removeEventListener('pointercancel', stop);
    };
    // A pointer that no event made, as in a test, cannot be captured; the steps work all the same.
    if (down.isTrusted) label.setPointerCapture(down.pointerId);
    label.addEventListener('pointermove', onMove);
    label.addEventListener('pointerup', stop);
    label.addEventListener('pointercancel', stop);
  };
}
