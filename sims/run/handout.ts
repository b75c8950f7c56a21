import { FIRST_CHOICES, type Choices, type LeaveOut, type Paper } from '../../src/handout/choices.ts';
import { FONTS } from '../../src/handout/fonts.ts';
import { handoutOf } from '../../src/handout/handout.ts';
import { leaveOut } from '../../src/handout/leave-out.ts';
import { sheetFile } from '../../src/handout/sheet.ts';
import type { Programme } from '../../src/model/programme.ts';
import type { Outlook } from '../../src/results/outlook.ts';
import { fileName } from '../../src/storage/file.ts';

export const PAPERS: readonly Paper[] = ['A4', 'Letter'];
export const LEFT_OUT = ['trees', 'gardens', 'notes', 'title', 'log'] as const satisfies readonly (keyof LeaveOut)[];

/** What is asked of the handout on the command line. */
export interface HandoutOptions {
  /** As typed. */
  readonly file: string;
  readonly paper: Paper;
  /** Year-month-day; null for today. */
  readonly date: string | null;
  readonly link: string | null;
  readonly leave: readonly (typeof LEFT_OUT)[number][];
}

/** The calendar day on this machine, year-month-day. */
function today(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, '0');
  return `${String(now.getFullYear())}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/**
 * The one-page sheet as a file, the same that the page saves for the same programme, choices, date and link.
 * @param plans positions of the plans that were run; others are left out
 */
export function handoutFile(programme: Programme, outlook: Outlook, plans: readonly number[], { paper, date, link, leave }: HandoutOptions): string {
  const leaving: LeaveOut = {
    ...FIRST_CHOICES.leaveOut,
    ...Object.fromEntries(leave.map((part) => [part, true])),
    plans: programme.plans.flatMap(({ id }, p) => (plans.includes(p) ? [] : [id])),
  };
  const choices: Choices = { ...FIRST_CHOICES, paper, leaveOut: leaving };
  const handout = handoutOf(programme, outlook, choices, { date: date ?? today(), link }, fileName(leaveOut(programme, leaving)));
  if (!handout) throw new Error('No plan has been run.');
  return sheetFile(handout, FONTS);
}
