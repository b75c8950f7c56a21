import { failText } from '../../text/charts-more.ts';
import { readText } from '../../text/charts-read.ts';
import type { FailLayout } from './layout.ts';

/** A segment that can be read. */
export interface FailPlace {
  readonly plan: string;
  readonly mark: string;
  readonly group: string;
  readonly words: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** All segments in reading order: bar by bar, each from the left. */
export function failPlaces({ segments }: FailLayout, nameOf: (plan: string) => string): FailPlace[] {
  return segments.map(({ plan, mark, reason, share, x, y, width, height }) => {
    const outcome = reason === 'success' ? readText.success : failText.failure(reason).mid;
    return { plan, mark, group: plan, words: readText.outcome(nameOf(plan), outcome, share), x, y, width, height };
  });
}
