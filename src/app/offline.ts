/** A page that is open for long looks for a newer version when it is looked at again, at most so often, ms. */
const LOOK_AGAIN = 3_600_000;

export interface OfflineNews {
  /** From now on the page opens without a connection. */
  readonly ready: () => void;
  /** A newer version waits, or has come in by another window; `take` changes to it and loads the page anew. Nothing happens before. */
  readonly newer: (take: () => void) => void;
}

/** Keeps the whole page on the device, so that it opens where there is no signal. Only the built page does. */
export async function workOffline({ ready, newer }: OfflineNews, now: () => number): Promise<void> {
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  // After the page's own: the first picture does not wait for it.
  const { Workbox } = await import('workbox-window');
  const worker = new Workbox('./sw.js');
  const reload = () => location.reload();
  let taking = false;
  worker.addEventListener('activated', ({ isUpdate }) => {
    if (isUpdate !== true) ready();
  });
  worker.addEventListener('waiting', () =>
    newer(() => {
      taking = true;
      worker.messageSkipWaiting();
    }),
  );
  worker.addEventListener('controlling', ({ isUpdate }) => {
    if (taking) reload();
    else if (isUpdate === true) newer(reload);
  });
  let looked = now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || now() - looked < LOOK_AGAIN) return;
    looked = now();
    void worker.update().catch(() => undefined);
  });
  // Without a connection, or where a browser forbids it, the page works as any page does.
  void worker.register().catch(() => undefined);
}
