import type { UnitSystem } from '../../domain/model.ts';
import type { Remark } from '../../domain/quality/remark.ts';
import { formatLength } from '../../domain/units/format-length.ts';

/** What a remark on a record says on paper. */
export function remarkWords({ code, args }: Remark, units: UnitSystem): string {
  switch (code) {
    case 'tool.calibration-expired':
      return `${args.id} was ${args.daysOver} days past its calibration (due ${args.due}): for information only`;
    case 'tool.calibration-unknown':
      return `the calibration date of ${args.id} is not known: for information only`;
    case 'sheet.no-hold':
      return 'the sheet names no hold point';
    case 'sheet.hold-from-words':
      return `step ${args.step} is taken as the hold point by its words`;
    case 'sheet.torque-without-step':
      return `the sheet states ${args.torqueNm} N·m and marks no step for it`;
    case 'torque.differs':
      return `step ${args.step}: ${args.appliedNm.toFixed(1)} N·m applied, ${args.statedNm} N·m stated (${signed(args.differencePercent)} %), and the sheet states no tolerance`;
    case 'torque.no-stated-value':
      return `step ${args.step}: ${args.appliedNm.toFixed(1)} N·m applied, and the sheet states no torque`;
    case 'step.sheet-changed':
      return `step ${args.step} was done under other words: "${args.shown}"`;
    case 'piece.release-awaits':
      return `release awaits the signature of the ${args.role}`;
    case 'support.limit-unknown':
      return `the sheet does not state its limit of ${args.limit.replaceAll('-', ' ')}`;
    case 'support.load-not-reworked':
      return `moved by ${formatLength(Math.abs(args.moved), units)}; loads are those of the planned place`;
    case 'drop.limit-not-judged':
      return 'no limit of the distance to the first support is printed for this code basis';
    case 'insulation.dew-point-unknown':
      return 'dew point not known: ambient temperature or humidity was not written down';
    case 'insulation.surface-near-dew-point':
      return `surface ${args.surfaceTempC.toFixed(1)} °C is below dew point + 3 K = ${args.leastC.toFixed(1)} °C: for information only`;
    case 'insulation.temperature-missing':
      return 'surface temperature not written down';
    case 'insulation.locks-rule':
      return `locks the job's insulation rule: ${args.rule}`;
    case 'test.stale':
      return `work was recorded at ${args.workAt}, after the test`;
  }
}

function signed(percent: number): string {
  return `${percent > 0 ? '+' : ''}${percent.toFixed(1)}`;
}
