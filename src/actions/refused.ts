import type { Fault } from '../document/fault.ts';
import type { UnitSystem } from '../domain/model.ts';
import type { QualityRefusal } from '../domain/quality/refusal.ts';

/**
 * Why a person's request was not carried out; the person can do something about it. Words are chosen in views/words.
 * Thrown, so that one throw both rolls the transaction back and reaches the one table from refusal to status.
 */
export type Refusal =
  | { readonly code: 'signed-out' }
  | { readonly code: 'wrong-login' }
  | { readonly code: 'too-many'; readonly minutes: number }
  | { readonly code: 'forbidden'; readonly needs: string }
  | { readonly code: 'forged' }
  | { readonly code: 'not-found'; readonly what: string }
  | { readonly code: 'used-link' }
  | { readonly code: 'stale'; readonly current: unknown; readonly version: number }
  | { readonly code: 'version-needed' }
  | { readonly code: 'duplicate'; readonly what: string; readonly field: string; readonly value: string }
  | { readonly code: 'in-use'; readonly what: string; readonly by: string }
  | { readonly code: 'key-reused' }
  | { readonly code: 'invalid'; readonly faults: readonly Fault[] }
  | { readonly code: 'not-releasable'; readonly reasons: readonly string[] }
  | { readonly code: 'work-refused'; readonly what: string; readonly remedy: string; readonly number?: string }
  | RecordRefused;

/** A record of the floor that the domain does not take; `refusalWords` of views/words says it in the job's units and time. */
export interface RecordRefused {
  readonly code: 'record-refused';
  readonly refusal: QualityRefusal;
  readonly say: { readonly units: UnitSystem; readonly zone: string | null };
  /** What stands now, for whoever worked on an older reading; absent where nothing of the floor was read. */
  readonly current?: unknown;
  readonly version?: number;
}

export class Refused extends Error {
  readonly refusal: Refusal;
  constructor(refusal: Refusal) {
    super(`refused: ${refusal.code}`);
    this.refusal = refusal;
  }
}

export function refuse(refusal: Refusal): never {
  throw new Refused(refusal);
}
