import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { z } from 'zod';

const spreadSchema = z.strictObject({ median: z.number(), worst: z.number() });

const editsSchema = z.strictObject({
  what: z.string(),
  edits: z.int(),
  /** Milliseconds from an edit to the first picture that belongs to it. */
  editToPaint: spreadSchema,
  /** Longest task of the page's own thread after each edit, in milliseconds; 0 where none was over 50, which browsers do not tell. */
  longestTask: spreadSchema,
});

const pageSpeedSchema = z.strictObject({ browser: z.string(), series: z.array(editsSchema) });

export type Edits = z.infer<typeof editsSchema>;
export type PageSpeed = z.infer<typeof pageSpeedSchema>;

/** Times the page in a process of its own. */
export async function pageSpeed(top: string): Promise<PageSpeed> {
  const { stdout } = await promisify(execFile)(process.execPath, ['--import', 'tsx', join(top, 'sims/bench/page.ts')], { cwd: top, timeout: 300_000 });
  return pageSpeedSchema.parse(JSON.parse(stdout));
}
