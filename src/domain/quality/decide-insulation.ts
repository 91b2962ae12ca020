import { credited, type Decision, informationOnly, refused } from './decision.ts';
import { guardRecord } from './guard-record.ts';
import type { Instant } from './instant.ts';
import type { InsulationRule } from './insulation/criterion.ts';
import { type InsulationInput, type InsulationReport, judgeInsulation } from './insulation-test.ts';
import type { InsulationTestBody, NewRecord, SiteRecord } from './record.ts';
import type { Remark } from './remark.ts';

export interface InsulationSite extends Omit<InsulationInput, 'test' | 'at'> {
  /** The rule that the project's first test locked; null before it. */
  readonly lockedRule: InsulationRule | null;
  readonly records: readonly SiteRecord[];
  readonly now: Instant;
  readonly version: number;
}

/**
 * Takes or refuses an insulation test: the record is kept whatever its verdict, with the report as its working, once every
 * doubtful figure was confirmed. The first test of a project locks the rule that all later ones are judged by.
 */
export function decideInsulationTest(
  site: InsulationSite,
  record: NewRecord<InsulationTestBody>,
): Decision<InsulationReport> {
  const { body, at } = record;
  const fault = guardRecord(record, site);
  if (fault !== null) return refused(fault);
  const { lockedRule } = site;
  if (lockedRule !== null && lockedRule !== body.rule) {
    return refused({ code: 'insulation.rule-locked', args: { locked: lockedRule, asked: body.rule } });
  }
  const judged = judgeInsulation({ ...site, test: body, at });
  if (!judged.ok) return refused(judged.refusal);
  const { report } = judged;
  const open = report.questions.filter(({ code }) => !body.confirmed.includes(code));
  if (open.length > 0) return refused({ code: 'insulation.question-open', args: { questions: open } });
  const locks: Remark[] = lockedRule === null ? [{ code: 'insulation.locks-rule', args: { rule: body.rule } }] : [];
  const remarks = [...report.remarks, ...locks];
  return report.verdict === 'information-only' ? informationOnly(report, remarks) : credited(report, remarks);
}
