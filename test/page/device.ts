import type { Page } from 'playwright';
import { rowOf } from './visit.ts';

/** Puts a text where the first version kept its only programme. */
export const leaveEarlier = (page: Page, text: string): Promise<void> =>
  page.evaluate(
    (left) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('orchard-odds');
        opening.onerror = () => reject(new Error('The store cannot be opened.'));
        opening.onupgradeneeded = () => opening.result.createObjectStore('documents');
        opening.onsuccess = () => {
          const transaction = opening.result.transaction('documents', 'readwrite');
          transaction.objectStore('documents').put(left, 'programme');
          transaction.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    text,
  );

/** Clears what this site has in its database, the way a person does in the browser’s settings. */
export async function clearSiteData(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Storage.clearDataForOrigin', { origin: new URL(page.url()).origin, storageTypes: 'indexeddb' });
}

/** Types a number of flowers into the second generation of B. */
export async function typeFlowers(page: Page, flowers: string): Promise<void> {
  const box = page.getByRole('textbox', { name: 'Flowers each spring' });
  if ((await box.count()) === 0) await rowOf(page, 'B', 1).click();
  await box.fill(flowers);
}

/** Another tab of the same browser. */
export async function secondTab(page: Page, before = ''): Promise<Page> {
  const other = await page.context().newPage();
  other.setDefaultTimeout(55_000);
  if (before) await other.addInitScript(before);
  await other.goto(page.url());
  await other.locator('oo-lanes .lane').first().waitFor();
  return other;
}

export const savedNow = (page: Page): Promise<void> => page.getByRole('banner').getByText('saved on this device').waitFor();

/** Titles of the list, top first; the open one stands in its box. */
export const titles = (page: Page): Promise<string[]> =>
  page
    .locator('oo-mine ul.list')
    .first()
    .locator('li')
    .evaluateAll((items) => items.map((item) => item.querySelector('input')?.value ?? item.querySelector('.name')?.textContent ?? ''));
