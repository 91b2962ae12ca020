import { mkdirSync, readFileSync, renameSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const cache = path.join(root, 'node_modules', '.stamps', 'run');

/**
 * Runs a TypeScript file in this process. The file and everything of ours that it imports are joined into one
 * JavaScript file, kept until one of them changes: that starts in a third of the time that translating each file on its
 * way in takes. Packages are not joined, and the source map keeps our own lines in a stack trace.
 */
export async function importTypeScript(file) {
  const source = path.resolve(root, file);
  const joined = path.join(cache, `${path.relative(root, source).replaceAll(path.sep, '-')}.mjs`);
  if (!isFresh(joined) && !(await join(source, joined))) return importOneByOne(source);
  process.setSourceMapsEnabled(true);
  return import(pathToFileURL(joined).href);
}

function isFresh(joined) {
  try {
    const inputs = JSON.parse(readFileSync(listOf(joined), 'utf8'));
    return inputs.every(([input, changed, size]) => {
      const now = statSync(path.join(root, input));
      return now.mtimeMs === changed && now.size === size;
    });
  } catch {
    return false; // never joined, or a file is gone
  }
}

/** Gives false where the cache may not be written, as in a container that runs without rights to the program's folder. */
async function join(source, joined) {
  const { build } = await import('esbuild');
  const { outputFiles, metafile } = await build({
    absWorkingDir: root,
    entryPoints: [source],
    outfile: joined,
    bundle: true,
    packages: 'external',
    format: 'esm',
    platform: 'node',
    target: 'node20',
    sourcemap: 'linked',
    plugins: [ownPlaces],
    metafile: true,
    write: false,
    logLevel: 'error',
  });
  const inputs = [...Object.keys(metafile.inputs), 'tsconfig.json', 'package-lock.json', 'scripts/typescript.mjs'];
  const list = inputs.map((input) => [
    input,
    statSync(path.join(root, input)).mtimeMs,
    statSync(path.join(root, input)).size,
  ]);
  try {
    mkdirSync(cache, { recursive: true });
    for (const output of outputFiles) replaceFile(output.path, output.contents);
    replaceFile(listOf(joined), JSON.stringify(list)); // last: it vouches for the others
    return true;
  } catch (error) {
    if (['EACCES', 'EROFS', 'EPERM'].includes(error.code)) return false;
    throw error;
  }
}

function listOf(joined) {
  return `${joined}.json`;
}

// Whole or not at all, for two that start at once.
function replaceFile(file, contents) {
  const unfinished = `${file}.${process.pid}`;
  writeFileSync(unfinished, contents);
  renameSync(unfinished, file);
}

// A module that looks for files beside itself still finds them, though its code now stands in the joined file.
const ownPlaces = {
  name: 'own places',
  setup(build) {
    build.onLoad({ filter: /\.tsx?$/ }, ({ path: file }) => ({
      contents: readFileSync(file, 'utf8').replaceAll('import.meta.url', JSON.stringify(pathToFileURL(file).href)),
      loader: file.endsWith('x') ? 'tsx' : 'ts',
    }));
  },
};

async function importOneByOne(source) {
  const { register } = await import('tsx/esm/api');
  register({ tsconfig: path.join(root, 'tsconfig.json') });
  return import(pathToFileURL(source).href);
}
