import type { FactorName } from '../../src/domain/model.ts';

const WORDS: Readonly<Record<FactorName, string>> = {
  height: 'mounting height',
  congestion: 'congestion of the ceiling',
  storey: 'storeys above grade',
  live: 'beside equipment in service',
};

/** A condition of work that the hours depend on; one of the whole job is called what its labour book calls it. */
export function factorWord(factor: string): string {
  return Object.entries(WORDS).find(([name]) => name === factor)?.[1] ?? factor;
}
