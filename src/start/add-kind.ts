import { crossBetween, kindOf, type CatalogueCross, type CatalogueKind } from '../catalogue/catalogue.ts';
import type { Cross, Kind, Programme, Stock } from '../model/programme.ts';
import { merged, type Merged } from './merge.ts';
import { idGiver, localKind, sameName, sharedKinds } from './local.ts';

/** What can be added of a kind in one go: the kind itself, its crosses with one kind that is there, or its rootstocks. */
export interface Part {
  /** “itself”, “stocks”, or “with-” and the id of the programme’s kind it is crossed with. */
  readonly id: string;
  readonly kinds: readonly Kind[];
  readonly crosses: readonly Cross[];
  readonly stocks: readonly Stock[];
  /** Of crosses with another kind: its name, which ways round are missing, and what is known of those. */
  readonly pair?: { readonly name: string; readonly ways: 0 | 1 | 2; readonly known: 'published' | 'guess' | 'unheard-of' };
}

/** What a programme lacks of a kind of the catalogue. No part: it has everything. */
export interface KindOffer {
  readonly entry: CatalogueKind;
  /** The kind is there already, so that only what is missing is offered. */
  readonly present: boolean;
  readonly parts: readonly Part[];
}

export const ITSELF = 'itself';
export const STOCKS = 'stocks';

/** As long as a name may be. */
const LONGEST_NAME = 80;

const pairKey = (seed: string, pollen: string): string => `${seed} ${pollen}`;

/** A cross says itself how many seeds a fruit has at most where it says how many on average: the programme’s kind may hold other figures. */
function selfContained(cross: Cross, seed: CatalogueKind | undefined): Cross {
  const { seedsPerFruit, seedsAtMost } = cross;
  if (!seed || (seedsPerFruit === undefined) === (seedsAtMost === undefined)) return cross;
  return { ...cross, seedsPerFruit: seedsPerFruit ?? seed.kind.seedsPerFruit, seedsAtMost: seedsAtMost ?? seed.kind.seedsAtMost };
}

/** Takes entries of the catalogue over into one programme: its ids for kinds that it has, fresh ones where an id is taken. */
class Takeover {
  private readonly kindId: (wanted: string) => string;
  private readonly crossId: (wanted: string) => string;
  private readonly pairs: Set<string>;
  /** Names of kinds by their ids here. */
  private readonly names: Map<string, string>;
  /** Ids of kinds: the catalogue’s, and what stands for it here. */
  private readonly known = new Map<string, string>();

  constructor(private readonly programme: Programme) {
    this.kindId = idGiver(programme.kinds.map(({ id }) => id));
    this.crossId = idGiver(programme.crosses.map(({ id }) => id));
    this.pairs = new Set(programme.crosses.map(({ seed, pollen }) => pairKey(seed, pollen)));
    this.names = new Map(programme.kinds.map(({ id, name }) => [id, name]));
    for (const { entry, own } of sharedKinds(programme)) this.known.set(entry.id, own.id);
  }

  private idOf(kind: string): string {
    return this.known.get(kind) ?? kind;
  }

  /** The kind under an id of its own; nothing if the programme has it. */
  kind(kind: Kind): Kind[] {
    if (this.known.has(kind.id)) return [];
    const id = this.kindId(kind.id);
    this.known.set(kind.id, id);
    this.names.set(id, kind.name);
    const { firstFruit } = kind;
    const between =
      'between' in firstFruit ? { between: { seed: this.idOf(firstFruit.between.seed), pollen: this.idOf(firstFruit.between.pollen) } } : undefined;
    return [{ ...kind, id, firstFruit: between ?? firstFruit }];
  }

  /** The cross under an id of its own; nothing if the programme has one of that pair. */
  cross(cross: Cross): Cross[] {
    const [seed, pollen] = [this.idOf(cross.seed), this.idOf(cross.pollen)];
    const key = pairKey(seed, pollen);
    if (this.pairs.has(key)) return [];
    this.pairs.add(key);
    const own = `${this.nameOf(seed)} × ${this.nameOf(pollen)}`;
    const name = own.length <= LONGEST_NAME ? own : cross.name;
    return [{ ...selfContained(cross, kindOf(cross.seed)), id: this.crossId(cross.id), name, seed, pollen, gives: this.idOf(cross.gives) }];
  }

  /** A name that is a cross itself stands in brackets. */
  private nameOf(kind: string): string {
    const name = this.names.get(kind) ?? kind;
    return name.includes(' × ') ? `(${name})` : name;
  }

  /** Hybrid and crosses of two kinds, both ways round. What the programme’s own cross of the pair gives stands for the hybrid. */
  pair(there: CatalogueCross, back: CatalogueCross): Pick<Part, 'kinds' | 'crosses'> & Omit<NonNullable<Part['pair']>, 'name'> {
    const [seed, pollen] = [this.idOf(there.cross.seed), this.idOf(there.cross.pollen)];
    const gives = this.hybridOf(there, [pairKey(seed, pollen), pairKey(pollen, seed)]);
    const kinds = there.hybrid ? this.kind(this.pairing(there.hybrid, [there.cross.seed, there.cross.pollen])) : [];
    const direct = [there, back].flatMap((found) => this.cross(found.cross).map((cross) => ({ found, cross })));
    // Where seedlings count as one of the two kinds, the crosses of that kind hold for them too.
    const apart = gives !== seed && gives !== pollen;
    const onward = apart ? there.backcrosses.flatMap((cross) => this.cross(cross)) : [];
    const found = direct.map((each) => each.found);
    return {
      kinds,
      crosses: [...direct.map(({ cross }) => cross), ...onward],
      ways: found.length === 2 ? 2 : found.length === 1 ? 1 : 0,
      known: knownOf(found),
    };
  }

  /** A programme that takes the sets of both parents two by two, does so with their hybrid. */
  private pairing(hybrid: Kind, parents: readonly string[]): Kind {
    const own = parents.map((id) => this.programme.kinds.find((kind) => kind.id === this.idOf(id)) ?? kindOf(id)?.kind);
    return own.some((kind) => kind?.inheritance === 'polysomic') ? hybrid : { ...hybrid, inheritance: 'disomic' };
  }

  /** The programme’s own kind that the seedlings of a pair are, if it has one. */
  private hybridOf({ hybrid }: CatalogueCross, pairs: readonly string[]): string | undefined {
    if (!hybrid) return undefined;
    const own = this.programme.crosses.find((cross) => pairs.includes(pairKey(cross.seed, cross.pollen)));
    const gives = own?.gives ?? this.programme.kinds.find(({ name }) => sameName(name, hybrid.name))?.id;
    if (gives !== undefined) this.known.set(hybrid.id, gives);
    return gives;
  }
}

const unheardOf = ({ cross: { set } }: CatalogueCross): boolean => typeof set === 'object' && 'low' in set && set.likely === 0;
function knownOf(found: readonly CatalogueCross[]): NonNullable<Part['pair']>['known'] {
  if (found.some(({ basis }) => basis === 'published')) return 'published';
  return found.length > 0 && found.every(unheardOf) ? 'unheard-of' : 'guess';
}

/**
 * Finds what a programme lacks of a kind of the catalogue, ready to be added: no id is taken, references name the programme’s entries,
 * and figures bring their sources. Pure.
 * @param id of a kind of the catalogue
 * @throws RangeError for a kind that the catalogue has not
 */
export function kindOffer(programme: Programme, id: string): KindOffer {
  const entry = kindOf(id);
  if (!entry) throw new RangeError(`The catalogue has no kind “${id}”; ask kindOf first.`);
  const takeover = new Takeover(programme);
  const present = localKind(programme, id) !== undefined;
  const itself: Part = { id: ITSELF, kinds: takeover.kind(entry.kind), crosses: takeover.cross(crossBetween(id, id).cross), stocks: [] };
  const others = sharedKinds(programme).filter((other) => other.entry.id !== id);
  const crossed = others.map(({ entry: other, own }): Part => {
    const { kinds, crosses, ways, known } = takeover.pair(crossBetween(id, other.id), crossBetween(other.id, id));
    return { id: `with-${own.id}`, kinds, crosses, stocks: [], pair: { name: own.name, ways, known } };
  });
  const stockIds = new Set(programme.stocks.map((stock) => stock.id));
  const missing = entry.stocks.filter((stock) => !stockIds.has(stock.id) && !programme.stocks.some(({ name }) => sameName(name, stock.name)));
  const parts = [itself, ...crossed, { id: STOCKS, kinds: [], crosses: [], stocks: missing }];
  return { entry, present, parts: parts.filter(({ kinds, crosses, stocks }) => kinds.length + crosses.length + stocks.length > 0) };
}

/** The parts of an offer that are wanted; a kind that is not there yet comes along with any of them. */
export const wantedParts = ({ present, parts }: KindOffer, wanted: ReadonlySet<string>): readonly Part[] =>
  parts.filter(({ id }) => wanted.has(id) || (!present && id === ITSELF));

/**
 * Adds parts of an offer at the end of their lists; everything that was there stays as it is.
 * @returns the new document, checked; or why it cannot be: no room, or figures that contradict those already there
 */
export function addKind(programme: Programme, offer: KindOffer, wanted: ReadonlySet<string>): Merged {
  const parts = wantedParts(offer, wanted);
  return merged(programme, {
    ...programme,
    kinds: [...programme.kinds, ...parts.flatMap(({ kinds }) => kinds)],
    crosses: [...programme.crosses, ...parts.flatMap(({ crosses }) => crosses)],
    stocks: [...programme.stocks, ...parts.flatMap(({ stocks }) => stocks)],
  });
}
