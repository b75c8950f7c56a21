import { fileURLToPath } from 'node:url';
import { VitePWA } from 'vite-plugin-pwa';
import { defineConfig } from 'vitest/config';

const top = fileURLToPath(new URL('.', import.meta.url));

/** Loaded for Vitest only, so that starting and building the app never look for a browser. */
async function browserProvider() {
  const { playwright } = await import('@vitest/browser-playwright');
  const { findBrowser } = await import('./test/browser/find-browser.ts');
  return playwright({ launchOptions: await findBrowser() });
}

/** The page keeps itself on the device and can be installed; src/app/offline.ts says when a newer version comes in. */
const offline = VitePWA({
  registerType: 'prompt',
  injectRegister: false,
  workbox: { globPatterns: ['**/*.{js,css,html,svg,png,woff2}'], cleanupOutdatedCaches: true, navigateFallback: 'index.html' },
  manifest: {
    name: 'Orchard Odds',
    short_name: 'Orchard Odds',
    description: 'Compare breeding plans for fruit trees before spending ten years on one.',
    lang: 'en',
    start_url: './',
    display: 'standalone',
    background_color: '#f6f3e8',
    theme_color: '#f6f3e8',
    icons: [
      { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
      { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
      { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any maskable' },
    ],
  },
});

export default defineConfig(async ({ isSsrBuild }) => ({
  root: 'src',
  base: './',
  server: { host: '127.0.0.1' },
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2022' },
  worker: { format: 'es' as const },
  // The headless programs are no page.
  plugins: process.env['VITEST'] || isSsrBuild ? [] : [offline],
  // Found only inside workers, so Vite would discover them mid-test and reload the page.
  optimizeDeps: { include: ['seedrandom', 'zod', 'd3', 'lit', '@lit/context', 'idb-keyval', 'ical.js', 'papaparse', 'workbox-window'] },
  test: {
    reporters: ['default', `${top}test/repo/tally.ts`],
    projects: [
      {
        extends: true as const,
        test: {
          name: 'core',
          root: top,
          include: ['test/**/*.test.ts'],
          exclude: ['test/components/**', 'test/page/**'],
          environment: 'node',
          testTimeout: 60_000,
        },
      },
      {
        extends: true as const,
        test: {
          name: 'page',
          root: top,
          include: ['test/page/**/*.test.ts'],
          environment: 'node',
          globalSetup: [`${top}test/page/preview.ts`],
          testTimeout: 60_000,
          hookTimeout: 60_000,
          // Two at once: each waits for a browser most of the time.
          maxWorkers: 2,
          // After the others: vitest wants projects of other numbers of workers in turn.
          sequence: { groupOrder: 1 },
        },
      },
      {
        extends: true as const,
        test: {
          name: 'components',
          root: top,
          include: ['test/components/**/*.test.ts'],
          setupFiles: [`${top}test/browser/setup.ts`],
          browser: {
            enabled: true,
            headless: true,
            screenshotFailures: false,
            ...(process.env['VITEST'] ? { provider: await browserProvider() } : {}),
            instances: [{ browser: 'chromium' as const }],
          },
        },
      },
    ],
  },
}));
