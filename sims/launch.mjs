// Runs sims/run.ts or sims/bench.ts: builds it into dist-node when anything it could be made of has changed, then runs the build in
// this process. Node 20 reads no TypeScript in worker threads, and a build that is kept starts at once.
//   node sims/launch.mjs run|bench [arguments…]     node sims/launch.mjs --build
import { createHash } from 'node:crypto';
import { closeSync, mkdirSync, openSync, readdirSync, readFileSync, readSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const TOP = fileURLToPath(new URL('..', import.meta.url));
const ENTRIES = ['run', 'bench'];
const BUILDS = join(TOP, 'dist-node');
const SOURCE = /\.(ts|mjs|js|json)$/;

/** All files of a folder, without packages, caches and the example programmes, which are read and not built. */
function filesIn(folder) {
  return readdirSync(join(TOP, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return entry.name === 'node_modules' || path === 'sims/examples' ? [] : filesIn(path);
    return SOURCE.test(entry.name) ? [path] : [];
  });
}

/** Hash of names and contents: a file's date says nothing after a checkout. */
function fingerprint() {
  const hash = createHash('sha256');
  for (const path of [...filesIn('src'), ...filesIn('sims'), 'package-lock.json', 'tsconfig.json', 'vite.config.ts'].sort()) {
    const text = readFileSync(join(TOP, path));
    hash.update(`${path} ${text.length}\n`).update(text);
  }
  return hash.digest('hex');
}

const stampOf = (print) => `// built from ${print}\n`;

function isBuilt(file, stamp) {
  let handle;
  try {
    handle = openSync(file, 'r');
  } catch {
    return false;
  }
  const start = Buffer.alloc(stamp.length);
  readSync(handle, start, 0, start.length, 0);
  closeSync(handle);
  return start.toString() === stamp;
}

/** The build appears under its name only when it is whole, so two that build at once do no harm. */
async function build(entry, file, stamp) {
  // Started by a test, the configuration would look for the tests' browser.
  delete process.env.VITEST;
  const { build: viteBuild } = await import('vite');
  const folder = join(BUILDS, `.building-${entry}-${process.pid}`);
  const clear = () => rmSync(folder, { recursive: true, force: true });
  process.once('exit', clear);
  try {
    await viteBuild({
      root: join(TOP, 'src'),
      configFile: join(TOP, 'vite.config.ts'),
      logLevel: 'error',
      build: {
        ssr: join(TOP, 'sims', `${entry}.ts`),
        outDir: folder,
        emptyOutDir: true,
        copyPublicDir: false,
        rolldownOptions: { output: { entryFileNames: '[name].js' } },
      },
    });
    const made = readdirSync(folder);
    if (made.length !== 1) throw new Error(`The build of ${entry} should be one file, but is: ${made.join(', ')}.`);
    const whole = join(folder, `${entry}.js`);
    writeFileSync(whole, stamp + readFileSync(whole, 'utf8'));
    renameSync(whole, file);
  } finally {
    clear();
    process.removeListener('exit', clear);
  }
}

async function built(entry, print) {
  const file = join(BUILDS, `${entry}.js`);
  const stamp = stampOf(print);
  if (!isBuilt(file, stamp)) {
    mkdirSync(BUILDS, { recursive: true });
    await build(entry, file, stamp);
  }
  return file;
}

// An interrupted build ends like an interrupted run; the runner puts its own listeners in the place of these.
for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.once(signal, () => process.exit(130));

const [, , what, ...rest] = process.argv;
const print = fingerprint();
if (what === '--build') for (const entry of ENTRIES) await built(entry, print);
else if (ENTRIES.includes(what)) {
  const file = await built(what, print);
  process.argv = [process.argv[0], file, ...rest];
  await import(pathToFileURL(file).href);
} else {
  process.stderr.write(`Say what to run: ${ENTRIES.join(' or ')}.\n`);
  process.exitCode = 2;
}
