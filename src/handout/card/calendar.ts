import ICAL from 'ical.js';
import { cardText, jobWords } from '../../text/card.ts';
import type { Job } from '../../results/season.ts';

export interface CalendarOptions {
  /** Calendar year of the bloom. */
  readonly year: number;
  /** Names the plan: the same job has the same name in every calendar made of it. */
  readonly key: string;
  readonly title: string;
  /** ISO date and time of making, UTC, as 2026-11-25T10:00:00Z. */
  readonly stamp: string;
}

/**
 * Returns the jobs of a season as an iCalendar file: one event a job, over the whole of its month, free time, with a reminder a week before.
 * Without persons, places or alarms that sound.
 *
 * **Source:** RFC 5545 (iCalendar), written by ical.js.
 */
export function calendarFile(jobs: readonly Job[], { year, key, title, stamp }: CalendarOptions): string {
  const calendar = new ICAL.Component('vcalendar');
  calendar.addPropertyWithValue('version', '2.0');
  calendar.addPropertyWithValue('prodid', '-//Orchard Odds//season//EN');
  for (const [i, job] of jobs.entries()) {
    const from = new ICAL.Time({ year: year + job.yearsOn, month: job.month, day: 1, isDate: true }, ICAL.Timezone.localTimezone);
    const until = from.clone();
    until.adjust(daysIn(from), 0, 0, 0);
    const event = new ICAL.Component('vevent');
    event.addPropertyWithValue('uid', `${key}-${String(year)}-${String(i + 1)}-${job.kind}@orchard-odds`);
    event.addPropertyWithValue('dtstamp', ICAL.Time.fromJSDate(new Date(stamp), true));
    event.addPropertyWithValue('dtstart', from);
    event.addPropertyWithValue('dtend', until);
    event.addPropertyWithValue('summary', jobWords(job));
    event.addPropertyWithValue('description', `${title}: ${cardText.share(job.share)}.`);
    event.addPropertyWithValue('transp', 'TRANSPARENT');
    calendar.addSubcomponent(event);
  }
  return `${calendar.toString()}\r\n`;
}

const daysIn = (time: InstanceType<typeof ICAL.Time>): number => ICAL.Time.daysInMonth(time.month, time.year);
