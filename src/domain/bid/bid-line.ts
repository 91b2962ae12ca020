import type { BidLine, BidLineName, BidWorking } from './result.ts';

/** A line of a bid, rounded once to the minor unit. `bidLine('tax', 100.5, …)` is 101. */
export function bidLine(line: BidLineName, amount: number, working: BidWorking, label: string | null = null): BidLine {
  return { line, label, amount: Math.round(amount), working };
}

/** A percentage of an amount. `on` names the lines that the amount is the sum of, less what is left out. */
export function percentLine(
  line: BidLineName,
  percent: number,
  of: number,
  base: { readonly on?: readonly BidLineName[]; readonly less?: number } = {},
  label: string | null = null,
): BidLine {
  return bidLine(line, (of * percent) / 100, { kind: 'percent', percent, of, ...base }, label);
}

/** Sum of lines, minor units. */
export function sumOfLines(lines: readonly BidLine[], names: readonly BidLineName[] | null = null): number {
  return lines.reduce((total, { line, amount }) => total + (names === null || names.includes(line) ? amount : 0), 0);
}
