import { spawn } from 'node:child_process';
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

const SCHEMA = `generator client {
  provider = "prisma-client"
  output   = "../gen/sqlite"
}
datasource db {
  provider = "sqlite"
}
`;

// These two write down that they were called instead of doing their work, which takes minutes and the network.
const GENERATOR = `const fs = require('node:fs');
const schema = process.argv[process.argv.indexOf('--schema') + 1];
const kind = fs.readFileSync(schema, 'utf8').includes('postgresql') ? 'postgres' : 'sqlite';
fs.appendFileSync('calls', 'generate ' + kind + '\\n');
fs.mkdirSync('gen/' + kind, { recursive: true });
fs.writeFileSync('gen/' + kind + '/client.ts', '');
`;
const INSTALLER = `const fs = require('node:fs');
fs.appendFileSync('calls', 'npm ' + process.argv[2] + '\\n');
fs.copyFileSync('package-lock.json', 'node_modules/.package-lock.json');
`;

export type Outcome = { readonly code: number | null; readonly stdout: string; readonly stderr: string };

/** A small project in a temporary folder with this project's own scripts, for tests of those scripts. */
export function makeProject() {
  const folder = mkdtempSync(path.join(os.tmpdir(), 'jobbook-project-'));
  const at = (name: string) => path.join(folder, name);
  const write = (name: string, content: string) => {
    mkdirSync(path.dirname(at(name)), { recursive: true });
    writeFileSync(at(name), content);
  };
  cpSync(path.join(root, 'scripts'), at('scripts'), { recursive: true, filter: (file) => !file.endsWith('.ts') });
  write('package.json', '{ "type": "module" }');
  write('tsconfig.json', readFileSync(path.join(root, 'tsconfig.json'), 'utf8'));
  write('package-lock.json', lockFile('1.0.0'));
  write('node_modules/.package-lock.json', lockFile('1.0.0'));
  write('node_modules/prisma/build/package.json', '{ "type": "commonjs" }');
  write('node_modules/prisma/build/index.js', GENERATOR);
  write('npm-package/package.json', '{ "type": "commonjs" }');
  write('npm-package/npm.js', INSTALLER);
  write('prisma/schema.prisma', SCHEMA);
  symlinkSync(path.join(root, 'node_modules', 'esbuild'), at('node_modules/esbuild'));
  return {
    write,
    read: (name: string) => readFileSync(at(name), 'utf8'),
    /** What was generated and installed since the last look. */
    calls: () => {
      const calls = existsSync(at('calls')) ? readFileSync(at('calls'), 'utf8').trim().split('\n') : [];
      rmSync(at('calls'), { force: true });
      return calls;
    },
    node: (...args: readonly string[]) => runNode(folder, args),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

export function lockFile(version: string): string {
  return JSON.stringify({ packages: { '': {}, 'node_modules/some': { version, integrity: `sha512-${version}` } } });
}

async function runNode(folder: string, args: readonly string[]): Promise<Outcome> {
  const env = { ...process.env, npm_execpath: path.join(folder, 'npm-package', 'npm.js') };
  const child = spawn(process.execPath, [...args], { cwd: folder, env, stdio: ['ignore', 'pipe', 'pipe'] });
  const code = new Promise<number | null>((resolve) => {
    child.on('close', resolve);
  });
  const [stdout, stderr] = await Promise.all([text(child.stdout), text(child.stderr)]);
  return { code: await code, stdout, stderr };
}
