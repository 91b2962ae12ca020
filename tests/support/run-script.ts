import { spawn } from 'node:child_process';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';

export type Finished = { readonly code: number | null; readonly stdout: string; readonly stderr: string };

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Runs one of the project's TypeScript files as a process of its own, as `npm run` would, and waits for its end. */
export async function runScript(
  file: string,
  args: readonly string[] = [],
  environment: Readonly<Record<string, string>> = {},
): Promise<Finished> {
  const child = spawn(process.execPath, ['scripts/run.mjs', file, ...args], {
    cwd: root,
    env: { ...process.env, ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const code = new Promise<number | null>((resolve) => {
    child.on('close', resolve);
  });
  const [stdout, stderr] = await Promise.all([text(child.stdout), text(child.stderr)]);
  return { code: await code, stdout, stderr };
}
