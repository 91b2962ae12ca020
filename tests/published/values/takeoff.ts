import { planCuts } from '../../../src/domain/takeoff/cutting-plan.ts';
import type { Calculation } from '../published.ts';

interface CuttingStock {
  readonly stock: number;
  readonly widths: readonly number[];
  readonly demand: readonly number[];
}

const cutting = ({ stock, widths, demand }: CuttingStock) =>
  planCuts(
    stock,
    widths.map((length, i) => ({ length, count: demand[i] ?? 0 })),
  );

export const calculations: Readonly<Record<string, Calculation>> = {
  'csp-chvatal': cutting,
  'csp-ampl': cutting,
};
