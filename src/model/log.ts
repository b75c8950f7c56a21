import { z } from 'zod';
import { field, id, name, note, reference, whole } from './fields.ts';

/*
 * The season log: what was done and counted, batch by batch, and the trees that stand. Kept as it was entered: numbers that do not add up
 * are flagged by the check, never mended; a tree that is gone changes its status and is never deleted; labels are text, whatever they look
 * like ("235,2", "001").
 */

/** A year, a month or a day, as far as it is known. ISO 8601. */
const when = field(z.string().regex(/^\d{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?)?$/, 'must be a year, a month as 2031-05, or a day as 2031-05-14'), {
  label: 'When',
  help: 'A year, a month as 2031-05, or a day as 2031-05-14.',
});

/** A tag or a name, exactly as it is written on the tree. */
const tag = field(z.string().trim().min(1).max(60), { label: 'Tag' });

const year = (label: string, help?: string) => whole(1500, 3000, { label, scale: 'year', ...(help === undefined ? {} : { help }) });

/** What can be counted, in the order in which it comes. */
export const COUNTED = ['flowers', 'fruits', 'seeds', 'sown', 'cameUp', 'weak', 'grafted', 'took', 'planted', 'alive', 'fruiting'] as const;
export type CountedStage = (typeof COUNTED)[number];

export const countSchema = z.strictObject({
  stage: field(z.enum(COUNTED), {
    label: 'Counted',
    words: {
      flowers: 'flowers pollinated',
      fruits: 'ripe fruits',
      seeds: 'sound seeds',
      sown: 'seeds sown',
      cameUp: 'seeds that came up',
      weak: 'weak seedlings',
      grafted: 'seedlings grafted',
      took: 'grafts that took',
      planted: 'planted out',
      alive: 'alive',
      fruiting: 'have borne fruit',
    },
  }),
  count: whole(0, 1e7, { label: 'How many' }),
  /** The unit that flowers were counted in, where it was not the flower. */
  unit: z
    .strictObject({
      name: field(z.enum(['cluster', 'bag', 'bur', 'branch']), {
        label: 'Counted by',
        words: { cluster: 'cluster', bag: 'bag', bur: 'bur', branch: 'branch' },
      }),
      flowers: whole(1, 1000, { label: 'Flowers in one', unit: 'flowers' }),
    })
    .optional(),
  when: when.optional(),
  note,
});

/** What befell a batch and says nothing of its rates. */
const eventSchema = z.strictObject({
  what: field(z.enum(['frost', 'drought', 'waterlogging', 'rodents', 'disease', 'moved', 'other']), {
    label: 'What happened',
    words: {
      frost: 'frost',
      drought: 'drought',
      waterlogging: 'waterlogging',
      rodents: 'rodents or deer',
      disease: 'disease',
      moved: 'moved to another place',
      other: 'something else',
    },
  }),
  when,
  lost: whole(0, 1e7, { label: 'Lost to it', help: 'Flowers, seeds or seedlings: kept in the log, not in the rates.' }).default(0),
  note,
});

/** One season's look at a tree that bore fruit. */
const seasonSchema = z.strictObject({
  year: year('Season'),
  /** By trait: fruits that showed it, of the fruits cut. */
  seen: z
    .record(
      z.string(),
      z.strictObject({
        showed: whole(0, 1000, { label: 'Fruits that showed it', unit: 'fruits' }),
        cut: whole(1, 1000, { label: 'Fruits cut', unit: 'fruits' }),
      }),
    )
    .default({}),
  values: z.record(z.string(), field(z.number().min(-1e6).max(1e6), { label: 'Measured' })).default({}),
  note,
});

export const loggedTreeSchema = z.strictObject({
  tag,
  /** Place in the orchard, written as the breeder writes it. */
  place: z
    .strictObject({
      block: field(z.string().trim().max(20), { label: 'Block' }).default(''),
      row: field(z.string().trim().max(20), { label: 'Row' }).default(''),
      tree: field(z.string().trim().max(20), { label: 'Tree in the row' }).default(''),
    })
    .optional(),
  status: field(z.enum(['alive', 'dead', 'culled', 'labelLost']), {
    label: 'Status',
    words: { alive: 'alive', dead: 'dead', culled: 'culled', labelLost: 'label lost' },
  }).default('alive'),
  statusSince: year('Since').optional(),
  weak: field(z.boolean(), { label: 'Weak on its own roots' }).default(false),
  stock: reference('stocks', { label: 'Grafted onto' }).optional(),
  firstFruit: year('First fruit in', 'Leave empty while it has not borne.').optional(),
  lookedUntil: year('Looked at until', 'The last year in which somebody looked whether it bore.').optional(),
  seasons: z.array(seasonSchema).max(60).default([]),
  /** Kept as a parent for the next generation. */
  picked: field(z.boolean(), { label: 'Kept as a pick' }).default(false),
  copies: z
    .array(
      z.strictObject({
        where: field(z.string().trim().min(1).max(80), { label: 'Where' }),
        whose: field(z.string().trim().max(80), { label: 'With whom' }).default(''),
        number: whole(1, 100, { label: 'Copies' }).default(1),
      }),
    )
    .max(20)
    .default([]),
  note,
});

const known = z.union([z.strictObject({ tree: reference('trees', { label: 'Tree' }) }), z.strictObject({ tag })]);

export const batchSchema = z.strictObject({
  id,
  name,
  year: year('Year of bloom', 'The year in which the flowers were pollinated, or the seed was gathered.'),
  seed: z.union([z.literal('unknown'), known]),
  pollen: z.union([z.literal('open'), z.literal('self'), z.literal('mixed'), z.literal('unknown'), known]),
  /** Needed where the parent is no tree of the programme. */
  seedKind: reference('kinds', { label: 'Kind of the seed parent' }).optional(),
  pollenKind: reference('kinds', { label: 'Kind of the pollen parent' }).optional(),
  route: reference('routes', { label: 'Seed raised by' }).optional(),
  /** The generation of a plan that it belongs to; plans begin from it. */
  generation: reference('generations', { label: 'Belongs to the generation' }).optional(),
  grafting: z
    .strictObject({
      who: field(z.enum(['weak', 'every', 'some']), { label: 'Grafted', words: { weak: 'weak ones', every: 'every seedling', some: 'some of each' } }),
      month: field(z.number().min(0.5).max(240), { label: 'At age', scale: 'months', unit: 'months', min: 0.5, max: 240 }),
      stock: reference('stocks', { label: 'Onto' }),
    })
    .optional(),
  /** A catastrophe that says nothing of the usual rates. */
  apart: field(z.boolean(), { label: 'Keep its counts out of the rates' }).default(false),
  counts: z.array(countSchema).max(200).default([]),
  events: z.array(eventSchema).max(50).default([]),
  trees: z.array(loggedTreeSchema).max(2000).default([]),
  note,
});

export const logSchema = z.strictObject({
  batches: z.array(batchSchema).max(400).default([]),
  /** Futures begin with the winter before this spring, from what the log says of the years before it; absent: with the first spring of the programme. */
  forecastFrom: year('Forecast from what stands, from spring', 'What is noted of that year and later is not used yet.').optional(),
});

export type Log = z.infer<typeof logSchema>;
export type Batch = z.infer<typeof batchSchema>;
export type LoggedTree = z.infer<typeof loggedTreeSchema>;
export type Count = z.infer<typeof countSchema>;
