import type { Length } from '../units/length.ts';
import type { Day, Instant } from './instant.ts';

/** What is worth telling beside a record that was taken: data, with its words in the view. Steps count from 1, as on the card. */
export type Remark =
  | {
      readonly code: 'tool.calibration-expired';
      readonly args: { readonly id: string; readonly due: Day; readonly day: Day; readonly daysOver: number };
    }
  | { readonly code: 'tool.calibration-unknown'; readonly args: { readonly id: string } }
  | { readonly code: 'sheet.no-hold'; readonly args: Record<never, never> }
  | { readonly code: 'sheet.hold-from-words'; readonly args: { readonly step: number; readonly text: string } }
  | { readonly code: 'sheet.torque-without-step'; readonly args: { readonly torqueNm: number } }
  | {
      readonly code: 'torque.differs';
      readonly args: {
        readonly step: number;
        readonly appliedNm: number;
        readonly statedNm: number;
        readonly differencePercent: number;
      };
    }
  | { readonly code: 'torque.no-stated-value'; readonly args: { readonly step: number; readonly appliedNm: number } }
  | { readonly code: 'step.sheet-changed'; readonly args: { readonly step: number; readonly shown: string } }
  | { readonly code: 'piece.release-awaits'; readonly args: { readonly role: 'office' | 'inspector' } }
  | { readonly code: 'support.limit-unknown'; readonly args: { readonly limit: SupportLimit } }
  | { readonly code: 'support.load-not-reworked'; readonly args: { readonly moved: Length } }
  | { readonly code: 'drop.limit-not-judged'; readonly args: Record<never, never> }
  | { readonly code: 'insulation.dew-point-unknown'; readonly args: Record<never, never> }
  | {
      readonly code: 'insulation.surface-near-dew-point';
      readonly args: { readonly surfaceTempC: number; readonly dewPointC: number; readonly leastC: number };
    }
  | { readonly code: 'insulation.temperature-missing'; readonly args: Record<never, never> }
  | { readonly code: 'insulation.locks-rule'; readonly args: { readonly rule: string } }
  | { readonly code: 'test.stale'; readonly args: { readonly testAt: Instant; readonly workAt: Instant } };

export type SupportLimit = 'spacing' | 'end-overhang' | 'joint-clearance' | 'fitting-distance' | 'crossing-clearance';
