import { COUNTED, type CountedStage } from '../../model/log.ts';
import type { PlainRole, Role } from './roles.ts';

/** Headings as this project writes them; each stands for one role. */
export const OWN_HEADERS: Readonly<Record<Exclude<PlainRole, 'keep' | 'leave'>, string>> = {
  id: 'Batch id',
  batch: 'Batch',
  year: 'Year of bloom',
  when: 'Date',
  cross: 'Cross',
  seed: 'Seed parent',
  pollen: 'Pollen',
  seedKind: 'Kind of the seed parent',
  pollenKind: 'Kind of the pollen parent',
  route: 'Seed raised by',
  generation: 'Generation',
  graftedWho: 'Grafted which',
  graftedMonth: 'Grafted at months',
  graftedOnto: 'Batch grafted onto',
  apart: 'Kept out of the rates',
  event: 'What happened',
  eventWhen: 'Happened on',
  eventLost: 'Lost to it',
  eventNote: 'Happened, note',
  batchNote: 'Batch note',
  number: 'No. in the batch',
  tag: 'Tag',
  position: 'Position',
  block: 'Block',
  row: 'Row',
  tree: 'Place in the row',
  status: 'Status',
  statusSince: 'Status since',
  weak: 'Weak on its own roots',
  stock: 'Grafted onto',
  firstFruit: 'First fruit',
  lookedUntil: 'Looked at until',
  picked: 'Kept as a pick',
  season: 'Season',
  seasonNote: 'Season, note',
  copyWhere: 'Copy at',
  copyWhose: 'Copy with',
  copyNumber: 'Copies',
  note: 'Note',
};

export const STAGE_HEADERS: Readonly<Record<CountedStage, string>> = {
  flowers: 'Flowers',
  fruits: 'Fruits',
  seeds: 'Seeds',
  sown: 'Sown',
  cameUp: 'Came up',
  weak: 'Weak seedlings',
  grafted: 'Grafted',
  took: 'Grafts took',
  planted: 'Planted out',
  alive: 'Alive',
  fruiting: 'Borne fruit',
};
export const whenHeader = (stage: CountedStage): string => `${STAGE_HEADERS[stage]}, on`;
export const noteHeader = (stage: CountedStage): string => `${STAGE_HEADERS[stage]}, note`;

/** A heading without case, marks and double spaces. */
export const plainHeader = (text: string): string =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s\u00a0_.:;#*()\-–?"“”']+/g, ' ')
    .trim();

/** Words of the trade, in English, by what they mean; the first that fits is taken. A number in a heading is no word. */
const WORDS: readonly (readonly [RegExp, Role])[] = [
  [
    /^(pollinated|crossed|made|bloom|pollination|cross(ing)?)? ?(year|yr)( of (bloom|pollination|cross(ing)?|the cross|sowing))?$|^(crop |growing )?season of bloom$|^year crossed$/,
    'year',
  ],
  [/^(seed parent|mother|female( parent)?|seed(parent)? tree|dam|maternal( parent)?|seed bearer|♀|fruit of)$/, 'seed'],
  [/^(pollen parent|pollen|father|male( parent)?|pollinator|pollinizer|pollen from|paternal( parent)?|pollen donor|sire|♂)$/, 'pollen'],
  [/^(cross|parents|parentage|pedigree|combination|family|breeding)$/, 'cross'],
  [/^(batch|lot|batch name|batch no|batch number|cross no|cross number|cross id|seed lot|population|progeny)$/, 'batch'],
  [
    /^(flowers?|blossoms?|blooms?|clusters?|bags?|burs?|branch(es)?|trusses|flower clusters?)( (pollinated|emasculated|crossed|worked|done|hand pollinated))?$|^(no|number|nr) (of )?(flowers|blossoms|clusters|bags)( pollinated)?$|^pollinated( flowers)?$|^crosses made$/,
    'count:flowers',
  ],
  [/^(ripe |picked |set )?(fruits?|apples|pears|plums|cherries|nuts)( (set|picked|ripe|harvested))?$|^(no|number|nr) (of )?fruits?$/, 'count:fruits'],
  [/^(sown|seeds? sown|seeds? planted|stones sown|pips sown|no sown)$/, 'count:sown'],
  [
    /^(sound |good |full |viable |plump )?(seeds?|pips|stones|kernels)( (sound|good|full|cleaned|total|got))?$|^(no|number|nr) (of )?(seeds?|pips|stones)$/,
    'count:seeds',
  ],
  [/^(came up|come up|germinated|germination|germ|up|emerged|sprouted|seedlings( up)?|no germinated|(no|number|nr) (of )?seedlings)$/, 'count:cameUp'],
  [/^(weak|weak ones|weak seedlings|sickly|runts|chlorotic)$/, 'count:weak'],
  [/^(grafted|grafts|no grafted|seedlings grafted|budded|chip budded|(no|number|nr) (of )?grafts( made)?|grafts made)$/, 'count:grafted'],
  [/^(took|takes?|grafts? took|grafts taken|grafts that took|successful grafts|graft takes?)$/, 'count:took'],
  [/^(planted( out)?|set out|field planted|lined out|no planted|transplanted|trees planted)$/, 'count:planted'],
  [/^(alive|living|survivors?|surviving|still alive|standing|left|remaining|alive now|trees left)$/, 'count:alive'],
  [/^(fruiting|fruited|bearing|in fruit|borne fruit|have fruited|no fruited)$/, 'count:fruiting'],
  [
    /^(tag|tags|label|tree tag|tree label|seedling|seedling no|seedling id|seedling number|tree id|tree no|tree number|selection|plant id|sel no|seedling label)$/,
    'tag',
  ],
  [/^(position|location|place|block row tree|pos|where|field position|orchard position)$/, 'position'],
  [/^(block|blk|plot|orchard|field|bed)$/, 'block'],
  [/^(row|rw|row no|line)$/, 'row'],
  [/^(tree in (the )?row|place in (the )?row|space|spot|tree position|tree|no in row)$/, 'tree'],
  [/^(status|state|fate|condition|alive dead|alive or dead)$/, 'status'],
  [/^(status since|died|year died|died in|culled in|year culled|date died|removed in|gone since)$/, 'statusSince'],
  [
    /^(first fruit|first fruited|first crop|first bearing|bears since|year of first fruit|first fruit year|first year of fruit|1st fruit|fruited in|first fruit in)$/,
    'firstFruit',
  ],
  [/^(looked (at )?until|last seen|last looked( at)?|last checked|last inspected|last visit)$/, 'lookedUntil'],
  [/^(stock|rootstock|root stock|grafted onto|grafted on|understock)$/, 'stock'],
  [/^(kept|picked|pick|selected|keep|keeper|kept as a pick)$/, 'picked'],
  [/^(season|crop|harvest|harvest year|crop year|judged|judged in|year judged|tasted in|evaluation year|season judged)$/, 'season'],
  [/^(date|day|when|counted on|date counted|pollination date|date pollinated|date of pollination|date of cross|crossed on|pollinated on)$/, 'when'],
  [/^(notes?|remarks?|comments?|observations?|memo)$/, 'note'],
  [/^(kind|species|genus)( of)? (the )?(seed parent|mother|female)$|^(seed parent|mother|female) (kind|species)$/, 'seedKind'],
  [/^(kind|species|genus)( of)? (the )?(pollen parent|father|male)$|^(pollen parent|father|male) (kind|species)$/, 'pollenKind'],
  [/^(event|damage|what happened|mishap)$/, 'event'],
];

const OWN = new Map<string, Role>([
  ...Object.entries(OWN_HEADERS).map(([role, words]): [string, Role] => [plainHeader(words), role as PlainRole]),
  ...COUNTED.flatMap((stage): [string, Role][] => [
    [plainHeader(STAGE_HEADERS[stage]), `count:${stage}`],
    [plainHeader(whenHeader(stage)), `countWhen:${stage}`],
    [plainHeader(noteHeader(stage)), `countNote:${stage}`],
  ]),
]);

/** What a heading alone says; undefined where it says nothing that is known. */
export function roleOfHeader(header: string): Role | undefined {
  const plain = plainHeader(header);
  const own = OWN.get(plain);
  if (own) return own;
  // “flowers 2019”, “12 fruits”: the year or number is no word.
  const bare = plain
    .replace(/\b\d+(st|nd|rd|th)?\b/g, ' ')
    .replace(/ +/g, ' ')
    .trim();
  return WORDS.find(([words]) => words.test(plain) || (bare !== '' && words.test(bare)))?.[1];
}

export const knownHeader = (header: string): boolean =>
  /^\s*(seen|measured): /.test(header) || roleOfHeader(header) !== undefined || /^(id|no|nr|number|#|name)\.?$/i.test(header.trim());

/** Whether a table was written by the export: no other has a batch id. */
export const isOwn = (headers: readonly string[]): boolean => headers.some((header) => plainHeader(header) === plainHeader(OWN_HEADERS.id));
