import type { InsulationStanding } from '../../domain/closeout/evidence.ts';
import type { PlacedPiece, RunLayout } from '../../domain/layout/result.ts';
import type { BuswayType, Run, Tap } from '../../domain/model.ts';
import type { RunCard } from '../../domain/quality/end-card.ts';
import type { Instant } from '../../domain/quality/instant.ts';
import type { InsulationResult } from '../../domain/quality/insulation-test.ts';
import type { JointCard } from '../../domain/quality/joint-card.ts';
import type { PieceCard } from '../../domain/quality/piece-card.ts';
import type { InsulationTestBody, SiteRecord } from '../../domain/quality/record.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../domain/quality/states.ts';
import type { SupportCard } from '../../domain/quality/support-card.ts';
import type { TapCard } from '../../domain/quality/tap-card.ts';
import type { Length } from '../../domain/units/length.ts';

/** Everything that a closeout prints of one run: the released design with its pieces, and their records as cards. */
export interface RunDossier {
  readonly run: Run;
  readonly levelName: string;
  readonly type: BuswayType;
  /** 0 while nothing was released: then the design as it stands, all of it planned. */
  readonly revision: number;
  readonly changed: boolean;
  readonly releasedAt: Instant | null;
  readonly releaseReason: string;
  readonly layout: RunLayout;
  readonly pieces: readonly PieceEntry[];
  readonly joints: readonly JointEntry[];
  readonly supports: readonly SupportEntry[];
  readonly taps: readonly TapEntry[];
  readonly whole: RunCard;
  readonly tests: readonly TestEntry[];
  readonly insulation: InsulationStanding;
}

export interface PieceEntry {
  readonly mark: string;
  readonly placed: PlacedPiece;
  readonly state: PieceState;
  readonly lot: string | null;
  readonly card: PieceCard;
}

export interface JointEntry {
  readonly mark: string;
  readonly at: Length;
  readonly state: JointState;
  readonly card: JointCard;
}

export interface SupportEntry {
  readonly mark: string;
  readonly at: Length;
  readonly measured: Length | null;
  readonly loadKg: number;
  readonly continuousLoadKg: number;
  readonly state: SupportState;
  readonly card: SupportCard;
}

export interface TapEntry {
  readonly at: Length;
  readonly tap: Tap;
  readonly state: TapState;
  readonly card: TapCard;
}

/** A test as it was recorded, judged again from its readings; `standing` is false once a later record replaced it. */
export interface TestEntry {
  readonly record: SiteRecord<InsulationTestBody>;
  readonly standing: boolean;
  readonly judged: InsulationResult;
}
