import type { Finding } from '../finding.ts';
import type { BuswayType, Project, Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import type { Say } from './say.ts';
import { sheetName } from './sheet-name.ts';
import type { SupportLimits } from './support-grid.ts';

/** 5 ft: the spacing of NEC 368.30 for busway that is not marked for more, 1 524 mm. */
export const NEC_SPACING: Length = 1524 * 80;
const NEC_SOURCE = 'NEC 368.30 (supports at intervals not over 5 ft unless designed and marked for more)';

export interface JudgedLimits {
  /** null: a limit is unknown without which no supports are laid out. */
  readonly limits: SupportLimits | null;
  readonly findings: readonly Finding[];
}

/**
 * Spacing and overhang to lay supports out by. On the NEC basis a silent sheet gets 5 ft with a note, and a spacing above 5 ft
 * without a stated source a warning; on the IEC basis a silent sheet, and a silent overhang on either, is a stop.
 */
export function supportLimits(run: Run, type: BuswayType, project: Project, say: Say): JudgedLimits {
  const { maxSpacing, maxEndOverhang, source } = type.support;
  const finding = (rule: string, severity: Finding['severity'], message: string, from = sheetName(type)): Finding => ({
    rule,
    severity,
    run: run.id,
    at: null,
    message,
    source: from,
  });
  const findings: Finding[] = [];
  const nec = project.codeBasis === 'NEC';
  const spacing = maxSpacing ?? (nec ? NEC_SPACING : null);
  if (maxSpacing === null && nec) findings.push(finding('support.source', 'note', defaultWords(say), NEC_SOURCE));
  if (nec && maxSpacing !== null && maxSpacing > NEC_SPACING && !isStated(source)) {
    findings.push(finding('support.source', 'warning', sourceWords(maxSpacing, say), NEC_SOURCE));
  }
  if (spacing === null) findings.push(finding('limit.unknown', 'stop', missingWords('spacing')));
  if (maxEndOverhang === null) findings.push(finding('limit.unknown', 'stop', missingWords('end overhang')));
  if (spacing === null || maxEndOverhang === null) return { limits: null, findings };
  return { limits: { maxSpacing: spacing, maxEndOverhang }, findings };
}

function isStated(source: string | null): boolean {
  return source !== null && source.trim() !== '';
}

function defaultWords(say: Say): string {
  return `The sheet states no hanger spacing, so ${say(NEC_SPACING)} was taken; enter the marked spacing if the busway is designed for more.`;
}

function sourceWords(spacing: Length, say: Say): string {
  return `A hanger spacing of ${say(spacing)} is over ${say(NEC_SPACING)}, which needs the busway's marked spacing: enter the sheet and revision that state it.`;
}

function missingWords(what: string): string {
  return `The greatest hanger ${what} is not stated, so no hangers were laid out; enter it from the sheet.`;
}
