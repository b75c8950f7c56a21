import { MOST_BYTES } from '../../model/read.ts';
import { faultOf } from '../../model/text-scan.ts';

/** What a file that was refused says, so that its entries can be called by their names; null where it is no JSON that we read. */
export async function saidBy(file: Pick<File, 'size' | 'text'>): Promise<unknown> {
  if (file.size > MOST_BYTES) return null;
  const plain = (await file.text()).replace(/^\uFEFF/, '');
  return faultOf(plain) ? null : JSON.parse(plain);
}
