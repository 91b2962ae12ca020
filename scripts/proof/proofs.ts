import { auditChain } from './audit-chain.ts';
import { beam } from './beam.ts';
import { concurrentEdits } from './concurrent-edits.ts';
import { coverings } from './coverings.ts';
import { cutting } from './cutting.ts';
import type { Proof } from './proof.ts';
import { sections } from './sections.ts';
import { solverSections } from './solver-sections.ts';
import { solverSupports } from './solver-supports.ts';
import { supports } from './supports.ts';

export const PROOFS: readonly Proof[] = [
  sections,
  coverings,
  supports,
  solverSections,
  solverSupports,
  beam,
  cutting,
  auditChain,
  concurrentEdits,
];
