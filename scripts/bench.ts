import type { Bench } from './bench/bench.ts';
import { readCommand } from './bench/command-line.ts';
import { compare, type Ratio } from './bench/compare.ts';
import {
  covering,
  faceOff,
  layoutCapacity,
  layoutGrowth,
  oneEdit,
  range,
  rangeDraws,
  supports,
  whatIfBench,
} from './bench/domain-benches.ts';
import { editForm, editRun, runPage, saveForm } from './bench/edit-benches.ts';
import { closeoutGrowth, takeoffPaper, takeoffWorkbook } from './bench/paper-benches.ts';
import { figuresProcess } from './bench/process-benches.ts';
import { reprice } from './bench/reprice-bench.ts';
import { floorsPage, insertingMany, releaseGrowth } from './bench/service-benches.ts';
import { solverLayout, solverSections, solverSupports } from './bench/solver-benches.ts';
import { throwawayDatabases } from './proof/databases.ts';

/**
 * `npm run bench -- [--only layout-growth,range] [--rounds 7]`: how long the program takes, as a ratio to a named baseline
 * measured in turns with it in the same run. A time alone says nothing about another machine, so one is printed only where
 * the program promises a limit, beside it. Exit 2 for a command that is refused.
 */
const BENCHES: readonly Bench[] = [
  layoutGrowth,
  layoutCapacity,
  oneEdit,
  faceOff,
  covering,
  supports,
  solverSections,
  solverSupports,
  solverLayout,
  range,
  rangeDraws,
  whatIfBench,
  insertingMany,
  releaseGrowth,
  floorsPage,
  editRun,
  editForm,
  saveForm,
  runPage,
  reprice,
  takeoffWorkbook,
  takeoffPaper,
  closeoutGrowth,
  figuresProcess,
];
const ROUNDS = 7;

const names = BENCHES.map(({ name }) => name);
const asked = readCommand(process.argv.slice(2), names, { rounds: { least: 1 } });
if (asked === null) {
  process.stderr.write(`npm run bench -- [--only ${names.join(',')}] [--rounds ${ROUNDS}]\n`);
  process.exitCode = 2;
} else {
  await measureAll(
    BENCHES.filter(({ name }) => asked.only.includes(name)),
    asked.numbers.rounds ?? ROUNDS,
  );
}

async function measureAll(benches: readonly Bench[], rounds: number): Promise<void> {
  const places = throwawayDatabases();
  process.stdout.write(
    `Median of ${rounds} rounds; half of the rounds lie within the range beside it. Compare ratios, not machines.\n\n`,
  );
  process.stdout.write(`${'name'.padEnd(16)}${'ratio'.padStart(9)}  ${'range'.padEnd(22)}what is compared\n`);
  try {
    for (const bench of benches) {
      process.stderr.write(`${bench.name} …\n`);
      const work = await bench.prepare(places);
      try {
        tell(bench, await compare(work, rounds));
      } finally {
        await work.close?.();
      }
    }
  } finally {
    await places.close();
  }
}

function tell({ name, measured, baseline, reading, limitMs }: Bench, { median, low, high, took }: Ratio): void {
  const range = `${short(low)} to ${short(high)}`;
  const limit = limitMs === undefined ? '' : `; ${short(took)} ms here, to be less than ${limitMs}`;
  process.stdout.write(
    `${name.padEnd(16)}${short(median).padStart(9)}  ${range.padEnd(22)}${measured} / ${baseline} (${reading}${limit})\n`,
  );
}

/** Three digits that count. `short(0.01234) = '0.0123'`. */
function short(ratio: number): string {
  return String(Number(ratio.toPrecision(3)));
}
