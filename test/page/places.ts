import { deflateSync } from 'node:zlib';
import type { Page } from 'playwright';
import { inject } from 'vitest';
import { exampleOf } from '../handout/sample.ts';
import { atRest, openFile, planLane, rowOf } from './visit.ts';

/** A place of the page, or something open on it, and the way there from the one before. */
export interface Stop {
  readonly name: string;
  /** Differs from the one before in colours only. */
  readonly brief?: boolean;
  readonly go: (page: Page) => Promise<void>;
}

/** A programme with a log of ten seasons and few futures, so that every page has something to say soon. */
const PROGRAMME = { ...exampleOf('red-pear-ten-seasons'), runs: 300 };
const packed = (): string => deflateSync(JSON.stringify({ ...exampleOf('peach-quick'), runs: 200 })).toString('base64url');

const rail = (page: Page, name: string) => page.getByRole('navigation', { name: 'Questions' }).getByRole('link', { name }).click();

/** Opens the programme that the walk is made with. */
export async function openWalked(page: Page): Promise<void> {
  await openFile(page, 'seasons.json', JSON.stringify(PROGRAMME));
  await page.getByRole('banner').getByText(PROGRAMME.title).waitFor();
  await atRest(page);
}

/** Every page and dialog, in an order in which one visit can see them all. */
export const STOPS: readonly Stop[] = [
  {
    name: 'What is likely?',
    go: async (page) => {
      await rail(page, 'What is likely?');
      await planLane(page, 'A').waitFor();
    },
  },
  {
    name: 'a plan pointed at, the others set back',
    brief: true,
    go: (page) => planLane(page, 'B').hover(),
  },
  {
    name: 'a row with the focus',
    brief: true,
    go: (page) => rowOf(page, 'C').focus(),
  },
  {
    name: 'a row open',
    go: async (page) => {
      await rowOf(page, 'B').click();
      await page.locator('oo-row-settings oo-form').first().waitFor();
    },
  },
  {
    name: 'a plan and more pictures open',
    go: async (page) => {
      await planLane(page, 'B').locator('button.plan-name').click();
      await page.locator('.plan-panel').waitFor();
      await page.locator('oo-more-pictures summary').first().click();
      await page.locator('oo-diary').waitFor();
      for (const table of await page.locator('details.data > summary').all()) await table.click();
    },
  },
  {
    name: 'What could I do?',
    go: async (page) => {
      await rail(page, 'What could I do?');
      await page.locator('oo-do .lane').first().waitFor();
    },
  },
  {
    name: 'What have I got?',
    go: async (page) => {
      await rail(page, 'What have I got?');
      await page.locator('oo-tray svg').first().waitFor();
      const trees = page.locator('oo-orchard-panel details.entry > summary').first();
      await trees.click();
      await page.locator('oo-orchard-panel oo-form').first().waitFor();
    },
  },
  {
    name: 'Would it pay to…?',
    go: async (page) => {
      await rail(page, 'Would it pay to');
      await page.getByRole('slider', { name: 'Place on the map to read' }).waitFor();
      // A question is asked once it comes into sight, or at its button.
      for (const question of ['graft', 'when', 'howmany', 'open', 'copies', 'trial', 'unknowns', 'better', 'ifs']) {
        const part = page.locator(`oo-pay-${question}`);
        await part.scrollIntoViewIfNeeded();
        const button = part.locator('button.main');
        if ((await button.count()) > 0) await button.click();
        await part.locator('details.method').waitFor();
        await part.getByText('are on the way…').waitFor({ state: 'detached', timeout: 90_000 });
        for (const table of await part.locator('details.data > summary').all()) await table.click();
      }
    },
  },
  {
    name: 'What has happened?',
    go: async (page) => {
      await rail(page, 'What has happened?');
      await page.locator('oo-happened button.add').click();
      await page.locator('oo-log-add').waitFor();
    },
  },
  {
    name: 'What do I tell others?',
    go: async (page) => {
      await rail(page, 'What do I tell others?');
      await page.locator('oo-sheet .sheet').waitFor();
    },
  },
  {
    name: 'My programmes',
    go: async (page) => {
      await rail(page, 'My programmes');
      await page.locator('oo-mine h1').waitFor();
    },
  },
  {
    name: 'the dialog that shares',
    go: async (page) => {
      await page.getByRole('button', { name: 'Share', exact: true }).click();
      await page.locator('oo-share dialog textarea').waitFor();
    },
  },
  {
    name: 'Start my own',
    go: async (page) => {
      await page.locator('oo-share dialog').getByRole('button', { name: 'Close' }).click();
      await rail(page, 'Start my own');
      await page.locator('oo-start h1').waitFor();
    },
  },
  {
    name: 'the guide',
    go: async (page) => {
      await page.goto(`${inject('url')}#/guide`);
      await page.locator('oo-guide .text h1').waitFor();
    },
  },
  {
    name: 'a programme that came with a link',
    go: async (page) => {
      await page.goto(`${inject('url')}#/open/${packed()}`);
      await page.locator('oo-opened-link button').first().waitFor();
    },
  },
  {
    name: 'a story that came with a link',
    go: async (page) => {
      await page.goto(`${inject('url')}#/story/${packed()}`);
      await page.locator('oo-story h1').waitFor();
      await page.getByText(/futures counted on this device/).waitFor({ state: 'detached' });
    },
  },
  {
    name: 'how long it takes, in that story',
    go: async (page) => {
      await page.locator('oo-story').getByRole('button', { name: 'Next' }).click();
      await page.locator('oo-story figure svg').first().waitFor();
    },
  },
  {
    name: 'a programme that cannot be saved',
    go: async (page) => {
      await page.goto(`${inject('url')}#/likely`);
      await planLane(page, 'A').waitFor();
      await page.evaluate(() => {
        IDBObjectStore.prototype.put = () => {
          throw new DOMException('full', 'QuotaExceededError');
        };
      });
      await rowOf(page, 'B').click();
      await page.getByRole('textbox', { name: 'Flowers each spring' }).fill('20');
      await page.locator('oo-trouble').getByRole('alert').waitFor();
      await atRest(page);
    },
  },
];
