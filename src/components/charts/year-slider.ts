import { html, type TemplateResult } from 'lit';

/** A plot that is read year by year: for the keyboard and for those who listen it is a slider whose value is words. */
export interface YearSlider {
  readonly label: string;
  readonly from: number;
  readonly to: number;
  /** Null: nothing is read now. */
  readonly now: number | null;
  readonly words: string;
  readonly plot: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
  readonly onKey: (event: KeyboardEvent) => void;
  readonly onPointer: (event: PointerEvent) => void;
  readonly onLeave?: (event: PointerEvent) => void;
}

export function yearSlider({ label, from, to, now, words, plot, onKey, onPointer, onLeave }: YearSlider): TemplateResult {
  const place = `left: ${String(plot.left)}px; top: ${String(plot.top)}px; width: ${String(plot.right - plot.left)}px; height: ${String(plot.bottom - plot.top)}px`;
  return html`<div
    class="plot"
    style=${place}
    role="slider"
    tabindex="0"
    aria-label=${label}
    aria-valuemin=${from}
    aria-valuemax=${to}
    aria-valuenow=${now ?? from}
    aria-valuetext=${words}
    @keydown=${onKey}
    @pointermove=${onPointer}
    @pointerdown=${onPointer}
    @pointerleave=${onLeave ?? null}
  ></div>`;
}
