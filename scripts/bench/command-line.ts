import { parseArgs } from 'node:util';

/** What a measuring command was asked: which of its items, and whole numbers by name. Null: the command is refused. */
export interface Asked {
  readonly only: readonly string[];
  readonly numbers: Readonly<Record<string, number | undefined>>;
}

/** Reads `--only a,b` and options that take a whole number of at least `least`; anything else is refused. */
export function readCommand(
  args: readonly string[],
  items: readonly string[],
  numbers: Readonly<Record<string, { readonly least: number }>>,
): Asked | null {
  try {
    const options = Object.fromEntries(
      ['only', ...Object.keys(numbers)].map((name) => [name, { type: 'string' as const }]),
    );
    const { values } = parseArgs({ args: [...args], options });
    const only = values.only === undefined ? items : values.only.split(',');
    if (only.length === 0 || only.some((name) => !items.includes(name))) return null;
    const read = Object.entries(numbers).map(([name, { least }]) => {
      const text = values[name];
      return { name, value: text === undefined ? undefined : Number(text), least };
    });
    if (read.some(({ value, least }) => value !== undefined && !(Number.isSafeInteger(value) && value >= least))) {
      return null;
    }
    return { only, numbers: Object.fromEntries(read.map(({ name, value }) => [name, value])) };
  } catch {
    return null;
  }
}
