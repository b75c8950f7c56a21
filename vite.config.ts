import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const top = fileURLToPath(new URL('.', import.meta.url));

/** Loaded for Vitest only, so that starting and building the app never look for a browser. */
async function browserProvider() {
  const { playwright } = await import('@vitest/browser-playwright');
  const { findBrowser } = await import('./test/browser/find-browser.ts');
  return playwright({ launchOptions: await findBrowser() });
}

export default defineConfig(async () => ({
  root: 'src',
  base: './',
  server: { host: '127.0.0.1' },
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2022' },
  worker: { format: 'es' as const },
  // Found only inside workers, so Vite would discover them mid-test and reload the page.
  optimizeDeps: { include: ['seedrandom', 'zod', 'd3', 'lit', '@lit/context', 'idb-keyval'] },
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
          fileParallelism: false,
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
