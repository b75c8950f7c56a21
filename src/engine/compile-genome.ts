import { placeMarkers, type Marker } from '../genetics/markers.ts';
import { FIRST_MARKER, S_LOCUS, type DoubleReduction, type GenomeLayout } from '../genetics/meiosis.ts';
import type { Programme } from '../model/programme.ts';
import { setsOf } from '../model/sets.ts';
import { exp } from '../random/elementary.ts';
import type { CompiledGenes, CompiledIncompatibility, CompiledOrigin } from './compiled-genome.ts';

type Genes = Programme['genes'];

/** Genes in order of group and position, then the free ones by id: the order in the document changes nothing. */
export function sortGenes(programme: Programme): Genes {
  const grouped = programme.genes.filter((gene) => gene.group !== undefined && gene.position !== undefined);
  const free = programme.genes.filter((gene) => !grouped.includes(gene));
  grouped.sort((a, b) => (a.group === b.group ? (a.position ?? 0) - (b.position ?? 0) : (a.group ?? '') < (b.group ?? '') ? -1 : 1));
  return [...grouped, ...free.sort((a, b) => (a.id < b.id ? -1 : 1))];
}

/** Recombination at a distance of cM: r = ½(1 − e^(−2d)). **Source:** Haldane 1919, J. Genet. 8:299–309. */
const recombinationAt = (cM: number) => 0.5 * (1 - exp((-2 * cM) / 100));

export function compileGenes(genes: Genes): CompiledGenes {
  const recombination = new Float64Array(genes.length).fill(0.5);
  genes.forEach((gene, i) => {
    const before = genes[i - 1];
    if (before?.group !== undefined && before.group === gene.group && before.position !== undefined && gene.position !== undefined)
      recombination[i] = recombinationAt(gene.position - before.position);
  });
  return {
    count: genes.length,
    linked: recombination.some((r) => r < 0.5),
    doubleReduction: genes.map(({ doubleReduction }) => doubleReduction),
    recombination,
  };
}

/** A locus of the walk, and where it lies if that is known. */
interface Locus {
  readonly target: number;
  readonly position: number;
}

/** What lies together on one chromosome, by linkage group; a gene that is free has one to itself. */
interface Chromosome {
  readonly group: string | null;
  readonly loci: Locus[];
  readonly alpha: number;
}

function chromosomesOf(programme: Programme, genes: Genes, withS: boolean): Chromosome[] {
  const chromosomes: Chromosome[] = [];
  // Where a free gene lies is not known: in the middle, where origin is followed.
  const middle = (programme.origin?.length ?? 0) / 2;
  const put = (group: string | undefined, position: number | undefined, target: number, alpha: number) => {
    const free = group === undefined || position === undefined;
    const here = free ? undefined : chromosomes.find((chromosome) => chromosome.group === group);
    const locus = { target, position: free ? middle : position };
    if (here) here.loci.push(locus);
    else chromosomes.push({ group: free ? null : group, loci: [locus], alpha });
  };
  genes.forEach(({ group, position, doubleReduction }, bit) => {
    put(group, position, bit, doubleReduction);
  });
  if (withS) put(programme.incompatibility?.group, programme.incompatibility?.position, S_LOCUS, 0);
  return chromosomes;
}

export interface CompiledGenome {
  /** Words a homologue, and most homologues that any tree has. */
  readonly words: number;
  readonly sets: number;
  /** Null where two homologues, plain genes and measured traits are all there is: the engine then takes the short way. */
  readonly layout: GenomeLayout | null;
  readonly origin: CompiledOrigin | null;
}

/** How genomes are laid out and passed on: ploidy, linkage of genes with the S gene, genes that one parent alone passes on, markers of origin. */
export function compileGenome(programme: Programme, genes: Genes, measured: number, incompatibility: CompiledIncompatibility | null): CompiledGenome {
  const sets = Math.max(...programme.kinds.map(setsOf));
  const sWord = incompatibility?.word ?? -1;
  const plainWords = 1 + measured + (incompatibility ? 1 : 0);
  const kinds = programme.origin ? foundingKinds(programme) : [];
  const originWords = kinds.length > 1 ? 32 - Math.clz32(kinds.length - 1) : 0;
  const words = plainWords + originWords;
  const special = genes.some(({ passes }) => passes !== 'both');
  if (sets === 2 && !incompatibility && !special && !programme.origin) return { words, sets, layout: null, origin: null };
  const chromosomes = chromosomesOf(programme, genes, incompatibility !== null);
  const markers = programme.origin ? markersOf(programme.origin, chromosomes) : [];
  const marked = (c: number) => markers.flatMap(({ chromosome, position }, m): Locus[] => (chromosome === c ? [{ target: FIRST_MARKER + m, position }] : []));
  const count = Math.max(chromosomes.length, ...markers.map(({ chromosome }) => chromosome + 1));
  const walk = Array.from({ length: count }, (_, c) => walkOf([...(chromosomes[c]?.loci ?? []), ...marked(c)])).flat();
  const mask = (passes: 'pollen' | 'seed') => genes.reduce((bits, gene, bit) => (gene.passes === passes ? bits | (1 << bit) : bits), 0);
  return {
    words,
    sets,
    layout: {
      words,
      most: sets,
      measured,
      sWord,
      originFrom: plainWords,
      originWords,
      loci: Uint8Array.from(walk, ({ target }) => target),
      recombination: Float64Array.from(walk, ({ r }) => r),
      free: walk.every(({ r }) => r === 0.5) && markers.length === 0,
      doubleReduction: chromosomes.flatMap((chromosome, c) => (chromosome.alpha > 0 ? [reductionOf(chromosome, markers, c)] : [])),
      notBySeed: mask('pollen'),
      notByPollen: mask('seed'),
    },
    origin: programme.origin ? originOf(programme, genes, kinds, markers, { words, from: plainWords, count: originWords }) : null,
  };
}

interface Step extends Locus {
  /** Recombination with the locus before it. */
  readonly r: number;
}

/** The loci of a chromosome in order. */
function walkOf(loci: readonly Locus[]): Step[] {
  const sorted = [...loci].sort((a, b) => a.position - b.position || a.target - b.target);
  return sorted.map((locus, i) => ({ ...locus, r: i === 0 ? 0.5 : recombinationAt(locus.position - sorted[i - 1]!.position) }));
}

function reductionOf({ loci, alpha }: Chromosome, markers: readonly Marker[], c: number): DoubleReduction {
  return {
    share: alpha,
    genes: loci.reduce((bits, { target }) => (target < S_LOCUS ? bits | (1 << target) : bits), 0),
    s: loci.some(({ target }) => target === S_LOCUS),
    markers: markers.reduce((bits, { chromosome }, m) => (chromosome === c ? bits | (1 << m) : bits), 0),
  };
}

/** Chromosomes that carry genes come first; one is at least as long as its genes need. */
function markersOf({ chromosomes: count, length }: NonNullable<Programme['origin']>, carrying: readonly Chromosome[]): Marker[] {
  const lengths = Array.from({ length: Math.max(count, carrying.length) }, (_, c) =>
    Math.max(length, ...(carrying[c]?.loci.map(({ position }) => position) ?? [])),
  );
  return placeMarkers(lengths, new Map(carrying.map(({ loci }, c) => [c, loci.map(({ position }) => position)])));
}

/** Kinds of the trees and neighbours that plans begin from. */
function foundingKinds({ trees, pools, kinds }: Programme): number[] {
  const found = new Set([...trees.map(({ kind }) => kind), ...pools.flatMap(({ background }) => (background ? [background.kind] : []))]);
  return kinds.flatMap(({ id }, k) => (found.has(id) ? [k] : []));
}

/** The gene whose surroundings are looked at: the first that the goal rests on, else the first named. */
function selectedGene(programme: Programme, genes: Genes): number {
  const wanted = programme.goal.conditions.flatMap((condition) => {
    if (condition.type === 'test') return [condition.gene];
    const trait = programme.traits.find(({ id }) => id === condition.trait);
    const needs = trait?.type === 'shown' ? trait.rules[0]?.needs : undefined;
    return needs === undefined ? [] : needs.needs === 'total' ? needs.genes : needs.of.map(({ gene }) => gene);
  });
  const found = genes.findIndex(({ id }) => id === wanted[0]);
  return found >= 0 ? found : genes.length > 0 ? 0 : -1;
}

function originOf(programme: Programme, genes: Genes, kinds: readonly number[], markers: readonly Marker[], words: CompiledOrigin['words']): CompiledOrigin {
  const gene = selectedGene(programme, genes);
  const chromosomes = chromosomesOf(programme, genes, false);
  const c = chromosomes.findIndex(({ loci }) => loci.some(({ target }) => target === gene));
  const place = chromosomes[c]?.loci.find(({ target }) => target === gene)?.position;
  const marker = markers.findIndex(({ chromosome, position }) => chromosome === c && position === place);
  return { kinds, markers, words, gene: marker < 0 ? -1 : gene, marker };
}
