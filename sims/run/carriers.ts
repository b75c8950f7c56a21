import { carrierScreens, type CarrierScreen } from '../../src/genetics/carrier-screen.ts';
import type { Programme } from '../../src/model/programme.ts';
import { carriersText as words } from '../../src/text/carriers.ts';

export const CARRIERS_FORMAT = 'orchard-odds carriers';
export const CARRIERS_VERSION = 1;

/** Trees that may hide a trait, as other programs read it; trees and traits by their ids. */
export interface CarriersDocument {
  readonly format: typeof CARRIERS_FORMAT;
  readonly version: typeof CARRIERS_VERSION;
  readonly title: string;
  readonly traits: readonly {
    readonly trait: string;
    readonly name: string;
    /** Whether one copy is enough to show it: a test cross then tells nothing. */
    readonly oneIsEnough: CarrierScreen['oneIsEnough'];
    readonly trees: readonly {
      readonly tree: string;
      readonly name: string;
      readonly passesOn: number;
      readonly hasIt: number;
      readonly seen: string;
      readonly next: string;
      /** Seedlings that settle it 9 times in 10; null where none do. */
      readonly seedlings: number | null;
      readonly found: number;
      readonly leftIfNone: number;
      readonly testers: readonly { readonly tree: string; readonly years: number }[];
    }[];
    readonly leftOut: readonly { readonly tree: string; readonly why: string; readonly said: string }[];
  }[];
}

function traitOf({ trait, suspects, silent, oneIsEnough }: CarrierScreen): CarriersDocument['traits'][number] {
  return {
    trait: trait.id,
    name: trait.name,
    oneIsEnough,
    trees: suspects.map(({ tree, carries, right, test: { seedlings, found, ifNone }, testers }) => ({
      tree: tree.id,
      name: tree.name,
      passesOn: carries,
      hasIt: right,
      seen: [words.seen(tree.seen[trait.id]), words.testCross(tree.testCrosses[trait.id])].filter((part) => part !== '').join('. '),
      next: words.next({ carries, seedlings, ifNone, oneIsEnough, testers: testers.map((one) => ({ name: one.tree.name, years: one.years })) }),
      seedlings: Number.isFinite(seedlings) ? seedlings : null,
      found,
      leftIfNone: ifNone,
      testers: testers.map((one) => ({ tree: one.tree.id, years: one.years })),
    })),
    leftOut: silent.map(({ tree, why }) => ({ tree: tree.id, why, said: words.silent[why](tree.name) })),
  };
}

export const carriersDocument = (programme: Programme): CarriersDocument => ({
  format: CARRIERS_FORMAT,
  version: CARRIERS_VERSION,
  title: programme.title,
  traits: carrierScreens(programme).map(traitOf),
});

/** Readable JSON with a line end; the same bytes for the same programme. */
export const carriersJson = (document: CarriersDocument): string => `${JSON.stringify(document, null, 2)}\n`;

export function carriersReport({ title, traits }: CarriersDocument): string {
  const lines = traits.flatMap(({ name, trees, leftOut }) => [
    '',
    words.trait(name),
    ...trees.flatMap((one) => [`  ${one.name}: ${words.heads.chance.toLowerCase()} ${words.chance(one.passesOn)}. ${one.seen}`, `    ${one.next}`]),
    ...leftOut.map(({ said }) => `  ${said}`),
  ]);
  // Spaces that do not break are for the page.
  return [title, ...(traits.length === 0 ? ['', words.none] : lines), '', words.exact, ''].join('\n').replaceAll('\u00a0', ' ');
}
