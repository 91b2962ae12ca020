import { spawn } from 'node:child_process';

/** Runs a program to its end. Gives its exit code and everything it printed. */
export function run(program, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { ...options, stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding('utf8').on('data', (text) => {
        output += text;
      });
    }
    child.on('error', reject);
    child.on('close', (code) => resolve({ code: code ?? 1, output }));
  });
}

/** Runs a program that shares this process's terminal, and passes on the signals that would end it. Gives its exit code. */
export function runAttached(program, args, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(program, args, { ...options, stdio: 'inherit' });
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
    child.on('error', reject);
    child.on('close', (code) => resolve(code ?? 1));
  });
}

/** How to call npm: the one that called us, or the one on the path. */
export function npm(args) {
  const caller = process.env.npm_execpath;
  return caller?.endsWith('.js') ? [process.execPath, [caller, ...args]] : ['npm', args];
}
