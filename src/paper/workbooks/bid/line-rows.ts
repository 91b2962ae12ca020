import { sumOfLines } from '../../../domain/bid/bid-line.ts';
import type { BidLine, BidPart } from '../../../domain/bid/result.ts';
import { minorDigits } from '../../../domain/units/money.ts';
import type { Cell } from '../table-sheet.ts';
import { type Frame, majorOf, roundedTo } from './frame.ts';

export interface LineRows extends Frame {
  readonly lines: readonly BidLine[];
  /** The row of the first of them. */
  readonly first: number;
  readonly wordOf: (line: BidLine) => string;
  /** Where the priced takeoff has its sum, as `Material!F12`. */
  readonly takeoff: string;
  /** And the priced spares. */
  readonly spares: string;
  /** Where parts of a line have theirs, as `SUM(Parts!G4:G9)`; null where they stand nowhere. */
  readonly partsOf: (line: BidLine) => string | null;
}

/**
 * Lines of a bid as rows of a sheet: line, figure, of or at, what it is, amount in column E. Every amount but an entered one
 * is a formula over the rows above and the other sheets.
 */
export function lineRows(of: LineRows): readonly (readonly Cell[])[] {
  const major = majorOf(of);
  return of.lines.map((line, index) => [
    of.wordOf(line),
    ...figureCells(line, index, of),
    { formula: amountFormula(line, of.first + index, of), result: major(line.amount) },
  ]);
}

/** The two figures a line is made of, and what they are. */
function figureCells({ line, working }: BidLine, index: number, of: LineRows): readonly [Cell, Cell, string] {
  const major = majorOf(of);
  const above = `SUM(E${of.first}:E${of.first + index - 1})`;
  const exact = 10 ** minorDigits(of.currency);
  switch (working.kind) {
    case 'entered':
      return [null, null, 'as entered'];
    case 'priced':
      return [null, null, `from the sheet ${line === 'spares' ? 'Spares' : 'Material'}`];
    case 'quoted':
      return [null, null, 'from the sheets Material and Parts'];
    case 'parts':
      return [null, null, 'from the sheet Parts'];
    case 'percent': {
      const base = {
        formula: working.on === undefined ? baseBefore(line, above, of) : baseOn(working, of),
        result: major(working.of),
      };
      return [working.percent, base, '% of the amount beside it'];
    }
    case 'hours':
      return [working.hours, working.costPerHour / exact, 'labour hours, at the cost of one'];
    case 'range':
      return [
        working.to - working.from,
        working.costPerHour / exact,
        `hours from P50 to P${working.p}, at the cost of one`,
      ];
    case 'bond':
      return [
        working.percent,
        { formula: bondBase(working, above, exact), result: working.of / exact },
        `${working.base === 'price' ? '% of the price that holds it' : '% of cost and overhead'}${working.scale === undefined ? '' : `, and ${working.scale.fixed / exact}: by its scale`}`,
      ];
    case 'profit':
      return [working.markupPercent, { formula: above, result: major(working.of) }, '% markup on the amount beside it'];
  }
}

/** What the steps of a scale before the last one add stands in the price as well. */
function bondBase(
  { base, factor, scale }: Extract<BidLine['working'], { kind: 'bond' }>,
  above: string,
  exact: number,
): string {
  const fixed = base === 'price' ? plus(scale?.fixed, exact) : '';
  return `${fixed === '' ? above : `(${above}${fixed})`}*${factor}`;
}

function plus(fixed: number | undefined, exact: number): string {
  return fixed === undefined || fixed === 0 ? '' : `+(${fixed / exact})`;
}

/** A tax without a base of its own is on the material; overhead is on all of the cost. */
function baseBefore(line: BidLine['line'], above: string, of: LineRows): string {
  return line === 'tax' ? `E${of.first + of.lines.findIndex((own) => own.line === 'materials')}` : above;
}

function baseOn({ on = [], less }: { readonly on?: readonly string[]; readonly less?: number }, of: LineRows): string {
  const cells = of.lines.flatMap(({ line }, index) => (on.includes(line) ? [`E${of.first + index}`] : []));
  const sum = cells.length === 0 ? '0' : cells.join('+');
  return less === undefined ? sum : `${sum}-${majorOf(of)(less)}`;
}

function amountFormula(line: BidLine, row: number, of: LineRows): string {
  const { working } = line;
  switch (working.kind) {
    case 'entered':
      return String(majorOf(of)(line.amount));
    case 'priced':
      return line.line === 'spares' ? of.spares : of.takeoff;
    case 'quoted':
      return `${working.takeoff === 0 ? '0' : of.takeoff}+${of.partsOf(line) ?? partsInFull(working.parts, of)}`;
    case 'parts':
      return of.partsOf(line) ?? partsInFull(working.parts, of);
    case 'bond':
      return roundedTo(of, `B${row}*C${row}/100${plus(working.scale?.fixed, 10 ** minorDigits(of.currency))}`);
    case 'percent':
    case 'profit':
      return roundedTo(of, `B${row}*C${row}/100`);
    case 'hours':
    case 'range':
      return roundedTo(of, `B${row}*C${row}`);
  }
}

function partsInFull(parts: readonly BidPart[], of: LineRows): string {
  return parts.map(({ amount }) => majorOf(of)(amount)).join('+');
}

/** Sum of the rows that `lineRows` made. */
export function sumOfRows({ lines, first, ...frame }: LineRows): Cell {
  return { formula: `SUM(E${first}:E${first + lines.length - 1})`, result: majorOf(frame)(sumOfLines(lines)) };
}
