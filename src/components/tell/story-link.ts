import { leaveOut } from '../../handout/leave-out.ts';
import type { LeaveOut } from '../../handout/choices.ts';
import type { Programme } from '../../model/programme.ts';
import { LINK, linkFragment } from '../../storage/link.ts';

/** What the address of a story begins with; the same letters follow as in the address of a programme to open. */
export const STORY = '#/story/';

/** The part of an address that tells a programme as a story, without what its breeder keeps from others. */
export async function storyFragment(programme: Programme, leave: LeaveOut): Promise<string> {
  const fragment = await linkFragment(leaveOut(programme, leave));
  return `${STORY}${fragment.slice(LINK.length)}`;
}

/** The address of the same programme, as the reader of links takes it. */
export const programmeFragment = (story: string): string => `${LINK}${story.slice(STORY.length)}`;
