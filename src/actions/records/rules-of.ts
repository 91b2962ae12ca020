import type { QualityRules } from '../../domain/quality/project-rules.ts';
import type { FloorProject } from '../../store/floor-run.ts';

/** What the job asks beyond the sheet. Nobody accepts their own work, be it a joint, a hanger or a tap-off. */
export function rulesOf({ document }: FloorProject): QualityRules {
  return {
    secondPerson: 'all',
    timeZone: document.timeZone ?? null,
    units: document.units,
    codeBasis: document.codeBasis,
  };
}
