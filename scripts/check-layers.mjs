// node scripts/check-layers.mjs [FOLDER]: refuses an import that climbs. The rooms are described in DEVELOPERS.md.
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

/** What each room may import, beside itself. `drawings` is the part of `views` that paper uses too. */
const MAY_IMPORT = {
  domain: [],
  document: ['domain'],
  store: ['domain', 'document'],
  drawings: ['domain', 'document'],
  views: ['drawings', 'domain', 'document'],
  paper: ['drawings', 'domain', 'document'],
  actions: ['store', 'document', 'domain', 'paper'],
  config: [],
  http: ['actions', 'store', 'document', 'domain', 'paper', 'views', 'drawings', 'config'],
  process: ['http', 'actions', 'store', 'document', 'domain', 'paper', 'views', 'drawings', 'config'],
};

/** The packages that only the store may import: with them, a query could be written anywhere. */
const ONLY_STORE = /^(@prisma\/|better-sqlite3$|pg$)/;

/** Pure mathematics, the only packages that the domain may import. */
const DOMAIN_PACKAGES = /^(jstat|pure-rand(\/.*)?)$/;

const IMPURE = [
  [/\bprocess\.env\b/, 'reads the environment; only src/config.ts does'],
  [/\b(Date\.now\(|new Date\(\s*\))/, 'reads the clock; let the caller hand the time in', 'domain'],
  [/\bMath\.random\(/, 'throws dice; let the caller hand the numbers in', 'domain'],
];

const root = path.resolve(process.argv[2] ?? fileURLToPath(new URL('..', import.meta.url)));

const files = ['src', 'views'].flatMap((folder) => sourcesIn(path.join(root, folder)));
const problems = files.flatMap(problemsOf);
for (const problem of problems) console.error(problem);
if (problems.length > 0) process.exitCode = 1;
else console.log(`${files.length} files, every import points down`);

function sourcesIn(folder) {
  const entries = readdirSync(folder, { withFileTypes: true, recursive: true });
  return entries
    .filter((entry) => entry.isFile() && /\.tsx?$/.test(entry.name))
    .map((entry) => path.join(entry.parentPath ?? entry.path, entry.name))
    .sort();
}

function problemsOf(file) {
  const text = withoutComments(readFileSync(file, 'utf8'));
  const room = roomOf(file);
  const name = path.relative(root, file);
  const climbs = importsOf(text).flatMap((wanted) => {
    const why = faultOf(room, file, wanted);
    return why === undefined ? [] : [`${name}: imports ${wanted} – ${why}`];
  });
  return [...climbs, ...impurities(room, text).map((why) => `${name}: ${why}`)];
}

// Only comments that fill whole lines go: that is enough here, and cannot cut a text that holds two slashes.
function withoutComments(text) {
  return text.replace(/^\s*\/\*[\s\S]*?\*\/\s*$/gm, '').replace(/^\s*\/\/.*$/gm, '');
}

function roomOf(file) {
  const [top, ...rest] = path.relative(root, file).split(path.sep);
  if (top === 'gen') return 'gen';
  if (top === 'views') return rest[0] === 'drawings' ? 'drawings' : 'views';
  if (top !== 'src') return 'outside';
  if (rest[0] === 'config.ts') return 'config';
  return rest.length === 1 ? 'process' : rest[0];
}

function importsOf(text) {
  const statements = text.matchAll(/^(?:import|export)\b[^;'"]*?\bfrom\s*['"]([^'"]+)['"]/gm);
  const bare = text.matchAll(/^import\s*['"]([^'"]+)['"]/gm);
  const called = text.matchAll(/\bimport\(\s*['"]([^'"]+)['"]/g);
  return [...statements, ...bare, ...called].map((match) => match[1]);
}

function faultOf(room, file, wanted) {
  if (!wanted.startsWith('.')) return packageFault(room, wanted);
  const target = roomOf(path.resolve(path.dirname(file), wanted));
  if (target === 'gen') return room === 'store' ? undefined : 'only src/store may';
  if (target === room || (MAY_IMPORT[room] ?? []).includes(target)) return undefined;
  return `${room} may import only ${[room, ...(MAY_IMPORT[room] ?? [])].join(', ')}`;
}

function packageFault(room, wanted) {
  if (ONLY_STORE.test(wanted) && room !== 'store') return 'only src/store may';
  if (room === 'domain' && !DOMAIN_PACKAGES.test(wanted)) return 'the domain is pure: it may import only the domain';
  return undefined;
}

function impurities(room, text) {
  return IMPURE.filter(
    ([pattern, , only]) => (only === undefined ? room !== 'config' : room === only) && pattern.test(text),
  ).map(([, why]) => why);
}
