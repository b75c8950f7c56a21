import { html, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import type { Press } from '../../charts/reading.ts';
import { ChartElement } from './chart-element.ts';

/** Part of a picture, px. */
export interface Plot {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Slider {
  readonly label: string;
  readonly from: number;
  readonly to: number;
  /** What is read, in words. */
  readonly words: string;
  /** Where it lies; all over the picture, letting the pointer through, where there is none. */
  readonly plot?: Plot;
}

/**
 * A picture that is read at a place: with the arrow keys, with a finger, or with a mouse that passes over it. For the keyboard and for those
 * who listen it is a slider whose value is words.
 */
export abstract class ReadElement extends ChartElement {
  /** The place chosen: undefined leaves it to the picture, null reads nothing. */
  @state() protected chosen: number | null | undefined = undefined;
  /** What keys, a click or a finger have set: a mouse that only passed by leaves that behind. */
  private kept: number | null | undefined = undefined;

  /** The place that is read now; null for none. */
  protected abstract get reading(): number | null;
  /** The place after a key; undefined for keys that mean nothing here. */
  protected abstract placeFor(press: Press): number | null | undefined;
  /** The place under the pointer; null for none. */
  protected abstract placeAt(event: PointerEvent): number | null;

  /** The number of the place; null for none. */
  protected get valueNow(): number | null {
    return this.reading;
  }

  private readonly onOutside = (event: PointerEvent) => {
    if (event.pointerType === 'touch' && !event.composedPath().includes(this)) this.read(null);
  };

  override connectedCallback(): void {
    super.connectedCallback();
    document.addEventListener('pointerdown', this.onOutside);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.removeEventListener('pointerdown', this.onOutside);
  }

  /** Reads a place from now on. */
  protected read(place: number | null | undefined): void {
    this.chosen = place;
    this.kept = place;
  }

  protected readonly onKey = (event: KeyboardEvent): void => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const place = this.placeFor(event);
    if (place === undefined) return;
    event.preventDefault();
    this.read(place);
  };

  protected readonly onPointer = (event: PointerEvent): void => {
    const place = this.placeAt(event);
    if (event.type === 'pointermove' && event.pointerType === 'mouse') this.chosen = place ?? this.kept;
    else if (place !== null) this.read(place);
  };

  protected readonly onLeave = (event: PointerEvent): void => {
    if (event.pointerType === 'mouse') this.chosen = this.kept;
  };

  protected slider({ label, from, to, words, plot }: Slider): TemplateResult {
    const px = (n: number) => `${String(n)}px`;
    const place = plot
      ? `left: ${px(plot.left)}; top: ${px(plot.top)}; width: ${px(plot.right - plot.left)}; height: ${px(plot.bottom - plot.top)}`
      : 'inset: 0; pointer-events: none';
    return html`<div
      class="plot"
      style=${place}
      role="slider"
      tabindex="0"
      aria-label=${label}
      aria-valuemin=${from}
      aria-valuemax=${to}
      aria-valuenow=${this.valueNow ?? from}
      aria-valuetext=${words}
      @keydown=${this.onKey}
      @pointermove=${this.onPointer}
      @pointerdown=${this.onPointer}
      @pointerleave=${this.onLeave}
    ></div>`;
  }
}
