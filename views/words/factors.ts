import type { FactorName } from '../../src/domain/model.ts';

const WORDS: Readonly<Record<FactorName, string>> = {
  height: 'mounting height',
  congestion: 'congestion of the ceiling',
  storey: 'storeys above grade',
  live: 'beside equipment in service',
};

/** A condition of work that the hours depend on. */
export function factorWord(factor: FactorName): string {
  return WORDS[factor];
}
