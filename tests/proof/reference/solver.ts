import { createRequire } from 'node:module';

// Required, because its types describe the module that Node gives to `require` and not the one for `import`.
const loadHighs: typeof import('highs').default = createRequire(import.meta.url)('highs');

/** A program of 0-or-1 choices. Every coefficient of `least` is a whole number, so that equal sums are equal. */
export interface IntegerProgram {
  readonly least: readonly Term[];
  readonly rows: readonly Row[];
}

export interface Term {
  readonly factor: number;
  readonly choice: string;
}

export interface Row {
  readonly terms: readonly Term[];
  readonly is: '=' | '<=' | '>=';
  readonly bound: number;
}

export type Solve = (text: string) => ReadonlySet<string> | null;

/** HiGHS, an open solver of mixed integer programs, as a package: the names that it chooses, or null for none possible. */
export async function solver(): Promise<Solve> {
  const highs = await loadHighs();
  return (text) => {
    const { Status, Columns } = highs.solve(text, { ...EXACT, output_flag: false });
    if (Status === 'Infeasible') return null;
    if (Status !== 'Optimal') throw new Error(`The solver gave up: ${Status}.`);
    return new Set(Object.keys(Columns).filter((name) => columnValue(Columns[name]) > 0.5));
  };
}

/** Its default stops within a ten-thousandth of the best; that would compare nothing here. */
const EXACT = { mip_rel_gap: 0, mip_abs_gap: 0 } as const;

function columnValue(column: { Primal?: number } | undefined): number {
  return column?.Primal ?? 0;
}

/** In the solver's text form, a term a line: its reader takes no long lines. */
export function programText({ least, rows }: IntegerProgram): string {
  const choices = new Set([...least, ...rows.flatMap(({ terms }) => terms)].map(({ choice }) => choice));
  return [
    'Minimize',
    'obj:',
    ...least.map(termText),
    'Subject To',
    ...rows.flatMap(({ terms, is, bound }, i) => [`r${i}:`, ...terms.map(termText), `${is} ${bound}`]),
    'Binary',
    ...choices,
    'End',
    '',
  ].join('\n');
}

function termText({ factor, choice }: Term): string {
  return `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${choice}`;
}

export function commonDivisor(numbers: readonly number[]): number {
  const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
  return numbers.reduce((held, next) => divisor(held, Math.abs(next)), 0) || 1;
}
