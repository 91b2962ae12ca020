import type { CodeBasis, UnitSystem } from '../model.ts';

/** What the project asks beyond the sheet. A joint is always accepted by somebody who did none of its steps. */
export interface QualityRules {
  /** `all`: hangers and tap-offs too are accepted by somebody else than who set them. */
  readonly secondPerson: 'joints' | 'all';
  readonly timeZone: string | null;
  readonly units: UnitSystem;
  readonly codeBasis: CodeBasis;
}
