import { writeFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { campusJob } from '../src/document/demo/campus.ts';

/**
 * `npm run campus -- --runs 4000 --seed 1 --out FILE` writes an invented job document of any size, the same for the same
 * seed; without `--out` it goes to standard output. Exit 2 for a command that is refused.
 */
const USAGE = 'npm run -s campus -- [--runs 4000] [--seed 1] [--out FILE]: runs from 1 to 50000, seed a whole number.';

const size = readSize();
if (size === undefined) {
  process.stderr.write(`${USAGE}\n`);
  process.exitCode = 2;
} else {
  const text = `${JSON.stringify(campusJob(size))}\n`;
  if (size.out === undefined) process.stdout.write(text);
  else writeFileSync(size.out, text);
}

function readSize(): { runs: number; seed: number; out: string | undefined } | undefined {
  try {
    const { values } = parseArgs({
      options: {
        runs: { type: 'string', default: '4000' },
        seed: { type: 'string', default: '1' },
        out: { type: 'string' },
      },
    });
    const [runs, seed] = [Number(values.runs), Number(values.seed)];
    const isFit = Number.isInteger(runs) && runs >= 1 && runs <= 50_000 && Number.isInteger(seed);
    return isFit ? { runs, seed, out: values.out } : undefined;
  } catch {
    return undefined;
  }
}
