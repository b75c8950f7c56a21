import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const top = fileURLToPath(new URL('../../..', import.meta.url));

/** Serves the gallery alone: `npx vite test/charts/gallery`. */
export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  cacheDir: `${top}node_modules/.cache/gallery`,
  server: { host: '127.0.0.1', fs: { allow: [top] } },
  optimizeDeps: { include: ['d3', 'lit'] },
});
