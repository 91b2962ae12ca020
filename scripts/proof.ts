import { readCommand } from './bench/command-line.ts';
import { throwawayDatabases } from './proof/databases.ts';
import type { Outcome, Proof } from './proof/proof.ts';
import { PROOFS } from './proof/proofs.ts';

/**
 * `npm run proof -- [--only sections,beam] [--seed 1] [--count N]`: the heavy proofs at full count, each against a
 * reference that was written without the program (tests/proof/reference). Prints count and verdict of each; exit 1 when
 * an instance came out otherwise, 2 for a command that is refused. The tests run the same proofs at a short count.
 */
const names = PROOFS.map(({ name }) => name);
const USAGE = `npm run proof -- [--only ${names.join(',')}] [--seed 1] [--count N], whole numbers.`;
/** Instances that are told in full; the rest are only counted. */
const MOST_TOLD = 3;

const asked = readCommand(process.argv.slice(2), names, { seed: { least: 0 }, count: { least: 1 } });
if (asked === null) {
  process.stderr.write(`${USAGE}\n`);
  process.exitCode = 2;
} else {
  const chosen = PROOFS.filter(({ name }) => asked.only.includes(name));
  process.exitCode = (await proveAll(chosen, asked.numbers.seed ?? 1, asked.numbers.count)) ? 0 : 1;
}

async function proveAll(proofs: readonly Proof[], seed: number, count: number | undefined): Promise<boolean> {
  const databases = throwawayDatabases();
  let sound = true;
  process.stdout.write(`Seed ${seed}.\n`);
  try {
    for (const proof of proofs) {
      process.stderr.write(`${proof.name}: ${proof.says} …\n`);
      const began = performance.now();
      const outcome = await proof.run({ count: count ?? proof.fullCount, seed, databases });
      tell(proof, outcome, (performance.now() - began) / 1000);
      sound &&= outcome.failures.length === 0;
    }
  } finally {
    await databases.close();
  }
  process.stdout.write(sound ? 'All as the references have it.\n' : 'NOT as the references have it.\n');
  return sound;
}

function tell({ name }: Proof, { compared, failures, note }: Outcome, seconds: number): void {
  const verdict = failures.length === 0 ? 'agrees' : `FAILED on ${failures.length}`;
  const count = compared.toLocaleString('en').padStart(8);
  process.stdout.write(
    `${name.padEnd(18)}${count}  ${verdict.padEnd(10)} ${seconds.toFixed(0).padStart(4)} s  ${note}\n`,
  );
  for (const failure of failures.slice(0, MOST_TOLD)) process.stderr.write(`  ${failure}\n`);
}
