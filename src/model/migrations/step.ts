import { z } from 'zod';

/** 1 … N − 1: the versions that came before version N. Types cannot count, but they can lengthen a list. */
export type Before<N extends number, Seen extends readonly number[] = []> = Seen['length'] extends N
  ? Exclude<Seen[number], 0>
  : Before<N, [...Seen, Seen['length']]>;
type After<N extends number, Seen extends readonly unknown[] = []> = Seen['length'] extends N ? [...Seen, N]['length'] : After<N, [...Seen, N]>;

export type Plain = Readonly<Record<string, unknown>>;

/** One step of the ladder from an old version of the document to the one after it. */
export interface AnyStep {
  readonly from: number;
  readonly to: number;
  /** What a document of the old version may hold, as it was then: frozen, so that later changes of the current schema do not reach it. */
  readonly was: () => z.ZodType;
  /** Returns the document one version up. Pure: the document given stays as it is. It has passed `was`. */
  up(document: Plain): Plain;
}

/** The same, held to go up by exactly one. */
export interface Step<From extends number> extends AnyStep {
  readonly from: From;
  readonly to: After<From>;
}

type JsonSchema = Exclude<Parameters<typeof z.fromJSONSchema>[0], boolean>;
const isJsonSchema = (data: object): data is JsonSchema => '$schema' in data && data.$schema === 'https://json-schema.org/draft/2020-12/schema';

/**
 * Reads a schema that was written down as JSON Schema when its version was the current one.
 * @throws TypeError if the data does not say that it is one of draft 2020-12
 */
export function frozen(data: object): z.ZodType {
  if (!isJsonSchema(data)) throw new TypeError('The frozen schema is no JSON Schema of draft 2020-12.');
  return z.fromJSONSchema(data);
}
