import type { InsulationTestBody, SiteRecord } from '../../domain/quality/record.ts';

export { type RecordRow, siteRecord } from '../../store/records.ts';

export function isTest(record: SiteRecord): record is SiteRecord<InsulationTestBody> {
  return record.body.kind === 'insulation-test';
}
