import type { Outlook } from '../../results/outlook.ts';
import { funnelText } from '../../text/charts-more.ts';
import { readText } from '../../text/charts-read.ts';
import { rowNames } from '../boughs/lane.ts';
import { stepsOf } from './layout.ts';

/** A step that can be read. */
export interface StepPlace {
  readonly plan: string;
  readonly mark: string;
  readonly group: string;
  readonly words: string;
  /** The panel, counted over all plans, and the step in it. */
  readonly panel: number;
  readonly step: number;
}

/** All steps in reading order: plan by plan, generation by generation, from flower to pick. */
export function stepPlaces({ plans }: Outlook): StepPlace[] {
  let panels = 0;
  return plans.flatMap(({ id, mark, name, generations }) => {
    const names = rowNames(generations);
    return generations.flatMap((generation, index) => {
      const panel = panels++;
      return stepsOf(generation).map((stage, step): StepPlace => {
        const { p10, p50, p90 } = generation.stages[stage];
        const [low, high] = [Math.round(p10), Math.round(p90)];
        const range = low === high ? null : ([funnelText.tick(low), funnelText.tick(high)] as const);
        const words = readText.step(name, names[index] ?? generation.name, funnelText.amount(stage, Math.round(p50)), range, generation.reached);
        return { plan: id, mark, group: `${id} ${String(index)}`, words, panel, step };
      });
    });
  });
}
