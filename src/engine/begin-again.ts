import type { Orchard } from './orchard.ts';

/**
 * The winter in which a what-if takes the land: seed in the ground goes with what stood there, and the generations that stood there begin
 * again on other ground, as far as their parents live. One of which copies live elsewhere has gone on and stays so.
 */
export function beginAgain(orchard: Orchard): void {
  const { compiled, plan, year, batches } = orchard;
  const { gardenLostIn } = compiled.whatIf;
  const lost = (g: number) => {
    const { garden } = orchard.generation(g);
    return garden >= 0 && gardenLostIn[garden] === year;
  };
  let kept = 0;
  for (const batch of batches) if (!lost(batch.generation)) batches[kept++] = batch;
  batches.length = kept;
  for (let g = 0; g < plan.generations.length; g += 1) if (lost(g)) reset(orchard, g);
}

function reset(orchard: Orchard, g: number): void {
  const state = orchard.state(g);
  state.springs = state.raised = state.inGround = 0;
  if (orchard.livingPicks(g) > 0) return;
  state.goneOn = state.passed = false;
  // The wait of “at the latest” starts anew with its next pollination.
  state.firstPollination = -1;
  state.picks.length = 0;
}
