import { html, type TemplateResult } from 'lit';
import { placeAfter, type Press } from '../../charts/reading.ts';
import { readText } from '../../text/charts-read.ts';
import { ReadElement } from './read-element.ts';

/** One place of a picture, in reading order, and what it says. */
export interface Place {
  readonly plan: string;
  readonly mark: string;
  /** What up and down go over: the plan, or a part of it. */
  readonly group: string;
  readonly words: string;
}

/** A picture without an axis to go along: it is read from place to place, and the words of the place stand under it. */
export abstract class PlaceElement<Kind extends Place> extends ReadElement {
  protected places: readonly Kind[] = [];

  protected override get reading(): number | null {
    const { chosen, places } = this;
    return chosen === null || chosen === undefined || places.length === 0 ? null : Math.min(chosen, places.length - 1);
  }

  protected get place(): Kind | null {
    return this.reading === null ? null : (this.places[this.reading] ?? null);
  }

  protected override placeFor(press: Press): number | null | undefined {
    const next = placeAfter(
      press,
      this.reading,
      this.places.map(({ group }) => group),
    );
    if (next !== undefined) this.lift(next === null ? null : (this.places[next]?.plan ?? null));
    return next;
  }

  /** The picture for the keyboard: all over it, so that the pointer reads what it points at. */
  protected placeSlider(label: string): TemplateResult {
    return html`<div class="place" @focusout=${() => this.lift(null)}>
      ${this.slider({ label, from: 1, to: Math.max(1, this.places.length), words: this.place?.words ?? readText.none })}
    </div>`;
  }

  /** Counts from one: a slider's value is also read as "3 of 12". */
  protected override get valueNow(): number {
    return (this.reading ?? 0) + 1;
  }

  /** The words of the place, which keep their room when nothing is read, so that nothing below moves. */
  protected saidWords(hint: string): TemplateResult {
    const { place } = this;
    return html`<p class="read" aria-hidden="true">
      ${place ? html`<span class="mark" data-mark=${place.mark}>${place.mark}</span><span>${place.words}</span>` : html`<span class="keys">${hint}</span>`}
    </p>`;
  }

  /** Index of the place that lies nearest by the distance given; null where none is near enough. */
  protected nearest(distance: (place: Kind) => number, most = Infinity): number | null {
    const best = this.places
      .map((place, index) => ({ index, far: distance(place) }))
      .reduce<{ index: number; far: number } | null>((near, one) => (near === null || one.far < near.far ? one : near), null);
    return best === null || best.far > most ? null : best.index;
  }
}
