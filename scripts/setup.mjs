// Makes a fresh clone ready to run: checks Node, installs the locked packages, generates both database clients. Does
// only what is not done yet, says one line for each thing it does (on stderr), and nothing when there is nothing to do.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const stamps = path.join(root, 'node_modules', '.stamps');

const OLDEST_NODE = [20, 19];

const say = (line) => process.stderr.write(`${line}\n`);
const read = (file) => readFileSync(path.join(root, file), 'utf8');

/** Throws a sentence for people when something is in the way. */
export async function setUp() {
  refuseOldNode();
  if (isReady()) return;
  const { withSetupLock } = await import('./setup-lock.mjs');
  await withSetupLock(path.join(root, '.stamps'), say, async () => {
    if (!dependenciesReady()) await installDependencies();
    if (!clientsReady()) await generateClients();
  });
}

function refuseOldNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  const [oldestMajor, oldestMinor] = OLDEST_NODE;
  if (major > oldestMajor || (major === oldestMajor && minor >= oldestMinor)) return;
  throw new Error(
    `This needs Node.js ${OLDEST_NODE.join('.')} or newer, but runs on ${process.versions.node}. Install a newer Node.js and start again.`,
  );
}

function isReady() {
  return dependenciesReady() && clientsReady();
}

function dependenciesReady() {
  const lock = read('package-lock.json');
  if (readStamp('dependencies') === digest(lock)) return true;
  if (!installedMatches(lock)) return false;
  writeStamp('dependencies', digest(lock)); // somebody ran npm themselves
  return true;
}

/** Compares the lock file with npm's own list of what it has installed. */
function installedMatches(lock) {
  const installedList = path.join('node_modules', '.package-lock.json');
  if (!existsSync(path.join(root, installedList))) return false;
  const installed = JSON.parse(read(installedList)).packages;
  const wanted = Object.entries(JSON.parse(lock).packages).filter(([place]) => place.startsWith('node_modules/'));
  return wanted.every(([place, entry]) => {
    const found = installed[place];
    if (found === undefined) return entry.optional === true || mayBeLeftOut(entry);
    return found.version === entry.version && found.integrity === entry.integrity;
  });
}

function mayBeLeftOut(entry) {
  return process.env.NODE_ENV === 'production' && (entry.dev === true || entry.devOptional === true);
}

async function installDependencies() {
  say('Installing the packages of package-lock.json (the first time takes about two minutes) …');
  const { run, npm } = await import('./child.mjs');
  const done = await run(...npm(['ci', '--no-audit', '--no-fund']), { cwd: root });
  if (done.code !== 0) throw new Error(`npm ci failed:\n${done.output}`);
  writeStamp('dependencies', digest(read('package-lock.json')));
}

const clients = ['gen/sqlite/client.ts', 'gen/postgres/client.ts', 'prisma/.derived/postgres.prisma'];

function clientsReady() {
  return (
    readStamp('clients') === digest(read('prisma/schema.prisma')) &&
    clients.every((file) => existsSync(path.join(root, file)))
  );
}

async function generateClients() {
  say('Generating the database clients …');
  const schema = read('prisma/schema.prisma');
  mkdirSync(path.join(root, 'prisma', '.derived'), { recursive: true });
  writeFileSync(path.join(root, 'prisma', '.derived', 'postgres.prisma'), postgresSchema(schema));
  for (const file of ['prisma/schema.prisma', 'prisma/.derived/postgres.prisma']) await generate(file);
  writeStamp('clients', digest(schema));
}

/** The same models for PostgreSQL, one folder deeper. */
function postgresSchema(schema) {
  const stamped = schema
    .replace(/provider\s*=\s*"sqlite"/, 'provider = "postgresql"')
    .replace('"../gen/sqlite"', '"../../gen/postgres"');
  if (/sqlite"/.test(stamped) || !stamped.includes('../../gen/postgres')) {
    throw new Error('prisma/schema.prisma must say provider = "sqlite" once and output = "../gen/sqlite" once.');
  }
  return `// Stamped from prisma/schema.prisma by scripts/setup.mjs: change that file, not this one.\n${stamped}`;
}

async function generate(file) {
  const { run } = await import('./child.mjs');
  const tool = path.join(root, 'node_modules', 'prisma', 'build', 'index.js');
  // The tool wants a migration engine to exist, which it would download; generating never runs it.
  const env = { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, CHECKPOINT_DISABLE: '1' };
  const done = await run(process.execPath, [tool, 'generate', '--schema', file, '--no-hints'], { cwd: root, env });
  if (done.code !== 0) throw new Error(`Generating the database client of ${file} failed:\n${done.output}`);
}

function digest(text) {
  return createHash('sha256').update(text).digest('hex');
}

function readStamp(name) {
  const file = path.join(stamps, name);
  return existsSync(file) ? readFileSync(file, 'utf8') : undefined;
}

function writeStamp(name, value) {
  mkdirSync(stamps, { recursive: true });
  writeFileSync(path.join(stamps, name), value);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  await setUp().catch((error) => {
    say(error.message);
    process.exitCode = 1;
  });
}
