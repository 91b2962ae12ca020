import type { CodeBasis, UnitSystem } from '../../domain/model.ts';
import type { Instant } from '../../domain/quality/instant.ts';

/** What a closeout says of the job as a whole. Nothing in it comes from the clock: `asOf` is the time of the newest audit entry. */
export interface CloseoutJob {
  readonly number: string;
  readonly name: string;
  readonly client: string | null;
  readonly site: string | null;
  readonly units: UnitSystem;
  readonly timeZone: string | null;
  readonly codeBasis: CodeBasis;
  readonly codeEdition: string | null;
  readonly voltageLL: number;
  readonly voltageLN: number;
  readonly frequencyHz: number;
  readonly designVersion: number;
  readonly asOf: Instant;
  /** Number and hash of the newest entry of the job's audit chain. */
  readonly audit: { readonly entries: number; readonly head: string };
}
