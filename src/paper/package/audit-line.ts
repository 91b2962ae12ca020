import { canonicalJson } from '../../domain/canonical-json.ts';

/** An entry of the job's audit trail as the package carries it. `detailHash` stands for before and after. */
export interface AuditLine {
  readonly chain: string;
  readonly seq: number;
  readonly at: string;
  readonly userId: string | null;
  readonly userName: string;
  readonly action: string;
  readonly subject: string;
  readonly subjectId: string;
  readonly money: boolean;
  readonly before?: unknown;
  readonly after?: unknown;
  readonly detailHash: string;
  readonly previousHash: string;
  readonly hash: string;
}

/**
 * The line of one entry, without its details where they touch money: hash, time and person stay, and so the chain still
 * verifies. Whether they do is not left to the entry's own mark alone: a price under any of these names goes too.
 */
export function auditLine(entry: AuditLine): string {
  const { before, after, ...rest } = entry;
  const reduced = entry.money || namesMoney(before) || namesMoney(after);
  return `${canonicalJson(reduced ? rest : entry)}\n`;
}

const MONEY_NAMES = new Set([
  'price',
  'prices',
  'bid',
  'cost',
  'crew',
  'rateperhour',
  'costperproductivehour',
  'amount',
  'materials',
  'supervision',
  'sectionperm',
  'cutsurcharge',
  'jointkit',
  'jointlabour',
]);

function namesMoney(value: unknown): boolean {
  if (Array.isArray(value)) return value.some(namesMoney);
  if (value === null || typeof value !== 'object') return false;
  return Object.entries(value).some(([name, held]) => MONEY_NAMES.has(name.toLowerCase()) || namesMoney(held));
}
