import { oneCopy, twoCopies } from '../inheritance.ts';
import { guess } from '../sources.ts';
import type { CatalogueTrait } from '../types.ts';

/** Peach has more known single genes than any other fruit tree. */
export const peachTraits: readonly CatalogueTrait[] = [
  twoCopies({
    id: 'peach-nectarine',
    name: 'smooth skin (nectarine)',
    gene: { id: 'peach-g', name: 'g' },
    summary: 'One recessive gene: two copies make a nectarine; two peaches that carry it give a quarter.',
    source: { kind: 'published', confidence: 'high', note: 'Okie 1996, HortScience 31:618: recessive g; a quarter nectarines from carrier × carrier.' },
  }),
  oneCopy({
    id: 'peach-flat',
    name: 'flat fruit',
    gene: { id: 'peach-s', name: 'S' },
    summary: 'One dominant gene. Trees with two copies drop all fruit, so flat × flat gives two flat to one round among those that fruit.',
    source: { kind: 'remembered', confidence: 'high', note: 'Lesley 1940 and later maps: flat × round 1 : 1. From memory.' },
    note: 'The futures do not drop the fruit of trees with two copies: leave flat × flat out, or count a quarter less.',
  }),
  oneCopy({
    id: 'peach-white-flesh',
    name: 'white flesh',
    gene: { id: 'peach-y', name: 'Y' },
    summary: 'One dominant gene: two yellow copies make yellow flesh.',
    source: { kind: 'remembered', confidence: 'high', note: 'Monet and others: white over yellow, one gene. From memory.' },
  }),
  oneCopy({
    id: 'peach-low-acid',
    name: 'low acid',
    gene: { id: 'peach-d', name: 'D' },
    summary: 'One dominant gene: a single copy makes a low-acid fruit.',
    source: { kind: 'remembered', confidence: 'high', note: 'Monet and others: low acid D dominant. From memory.' },
  }),
  twoCopies({
    id: 'peach-no-blush',
    name: 'no red on the skin',
    gene: { id: 'peach-h', name: 'h' },
    summary: 'One recessive gene: two copies keep all red from the skin.',
    source: { kind: 'published', confidence: 'high', note: 'Beckman and others (year not noted): “highlighter” h, 1 : 1 and 3 : 1.' },
  }),
  twoCopies({
    id: 'peach-blood-flesh',
    name: 'blood-red flesh',
    gene: { id: 'peach-bf', name: 'bf' },
    summary: 'Reported as one recessive gene in one old source; its selfs gave about three blood to one pale, which does not sit well with that.',
    canShow: guess([0.6, 0.9, 1], 'The printed ratio in selfs and “recessive” contradict each other.'),
    source: {
      kind: 'published',
      confidence: 'middling',
      note: 'HortScience 33:1243 (1998): first generation all pale, selfs of the source about 3 blood : 1 pale.',
    },
  }),
  twoCopies({
    id: 'peach-evergreen',
    name: 'evergreen',
    gene: { id: 'peach-evg', name: 'evg' },
    summary: 'One recessive gene: a quarter of the second generation keeps its leaves.',
    source: { kind: 'published', confidence: 'high', note: 'Rodriguez-A. and others 1994, J. Am. Soc. Hort. Sci. 119:789: 3 deciduous : 1 evergreen.' },
  }),
  twoCopies({
    id: 'peach-dwarf',
    name: 'brachytic dwarf',
    gene: { id: 'peach-dw', name: 'dw' },
    summary: 'One recessive gene: two copies make a dwarf with short joints.',
    source: { kind: 'published', confidence: 'high', note: 'Lammerts 1945, quoted in J. Am. Soc. Hort. Sci. 134:236: 3 : 1.' },
  }),
  twoCopies({
    id: 'peach-pillar',
    name: 'pillar growth',
    gene: { id: 'peach-br', name: 'br' },
    summary: 'One gene without dominance: two copies make a pillar, one an upright tree; upright × upright gives 1 standard : 2 upright : 1 pillar.',
    source: { kind: 'published', confidence: 'high', note: 'Scorza and others 2002, J. Am. Soc. Hort. Sci. 127:254: 1 : 2 : 1.' },
  }),
];
