import { normalFrom } from '../random/draws.ts';
import type { Orchard } from './orchard.ts';
import { sexOf } from './sexes.ts';

/**
 * Makes individual i a copy of its seed parent: her genome, what she is able to show, her sex, and the lasting effects that travel
 * with her wood. Its site is its own. The luck stream stands at its cohort's key.
 */
export function copyMother(orchard: Orchard, i: number, mother: number): void {
  const { stand, compiled, facts, luck } = orchard;
  const handle = stand.handleOf(i);
  stand.genome.copyWithin(stand.offset(handle), stand.offset(mother), stand.offset(mother + 1));
  stand.able.copyWithin(stand.ableAt(handle), stand.ableAt(mother), stand.ableAt(mother + 1));
  stand.sex[i] = sexOf(orchard, mother);
  const measured = compiled.measured.length;
  for (const t of orchard.generation(stand.generation[i]!).judgedMeasured) {
    const scale = facts.scales[t]!;
    const travels = travelling(orchard, mother, t);
    stand.travels[i * measured + t] = travels;
    stand.lasting[i * measured + t] = travels + scale.site * normalFrom(luck.uniform());
  }
}

/** What travels with copies of a tree; a seedling whose generation is not judged for the trait has none of its own yet. */
function travelling(orchard: Orchard, mother: number, trait: number): number {
  const { stand, compiled, facts, luck } = orchard;
  const scale = facts.scales[trait]!;
  if (mother < compiled.trees.length) return scale.travels * facts.travels(mother, trait);
  const i = mother - stand.firstIndividual;
  return orchard.generation(stand.generation[i]!).judgedMeasured.includes(trait)
    ? stand.travels[i * compiled.measured.length + trait]!
    : scale.travels * normalFrom(luck.uniform());
}
