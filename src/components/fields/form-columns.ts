import type { FormItem } from './form-items.ts';

/** How tall an item is, in rows of one box; good enough to part a form in two. */
function heightOf(item: FormItem): number {
  const sum = (items: readonly FormItem[]): number => items.reduce((height, each) => height + heightOf(each), 0);
  switch (item.kind) {
    case 'field':
    case 'absent':
    case 'choices':
      return 1;
    case 'estimate':
      return 2;
    case 'line':
      return 1.3;
    case 'group':
    case 'table':
    case 'forms':
      return 1 + sum(item.items);
    case 'list':
      return 1 + item.entries.reduce((height, entry) => height + 1 + sum(entry.items), 0);
  }
}

/** Parts items in two columns of about the same height, in reading order; few items stay in one. */
export function splitColumns(items: readonly FormItem[]): readonly (readonly FormItem[])[] {
  if (items.length < 4) return [items];
  const heights = items.map(heightOf);
  const whole = heights.reduce((a, b) => a + b, 0);
  const taller = heights.map((_, cut) => {
    const left = heights.slice(0, cut).reduce((a, b) => a + b, 0);
    return Math.max(left, whole - left);
  });
  const cut = taller.indexOf(Math.min(...taller));
  return [items.slice(0, cut), items.slice(cut)].filter((column) => column.length > 0);
}
