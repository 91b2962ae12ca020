import type { Conflict } from '../../../../views/components/conflict-list.tsx';
import type { Refusal } from '../../../actions/refused.ts';
import { type ProjectDocument, runSchema } from '../../../document/job-document.ts';
import { writeRunForm } from '../../../document/run-form/write-run-form.ts';
import type { Entered } from '../form.ts';
import { baseOf } from './read-run.ts';

export interface Merged {
  /** One's own entries, and theirs where one's own were not touched. */
  readonly fields: Entered;
  readonly version: number;
  readonly base: string;
  readonly conflicts: readonly Conflict[];
}

/** Somebody else saved the run first: what both changed stands side by side, and what only they changed is taken into the form. */
export function afterStale(
  refusal: Extract<Refusal, { readonly code: 'stale' }>,
  mine: Entered,
  project: Pick<ProjectDocument, 'units' | 'currency'>,
): Merged {
  const document = runSchema.parse((refusal.current as { readonly document: unknown }).document);
  const theirs = writeRunForm(document, project);
  const base = baseOf(mine);
  const before = base === null ? null : writeRunForm(base, project);
  const names = [...new Set([...Object.keys(theirs), ...Object.keys(mine).filter(isEntry)])];
  const fields: Record<string, string> = { ...mine };
  const conflicts: Conflict[] = [];
  for (const name of names) {
    const [own, other] = [plain(mine[name]), plain(theirs[name])];
    const old = before === null ? null : plain(before[name]);
    if (sameText(own, other)) continue;
    if (old !== null && sameText(own, old)) fields[name] = theirs[name] ?? '';
    else if (old === null || !sameText(other, old)) conflicts.push({ field: name, mine: own, theirs: other });
  }
  return { fields, version: refusal.version, base: JSON.stringify(document), conflicts };
}

const OWN_NAMES = new Set(['_csrf', 'submissionId', 'version', 'base', 'asked']);

function isEntry(name: string): boolean {
  return !OWN_NAMES.has(name);
}

function plain(text: string | undefined): string {
  return (text ?? '').replace(/\r\n?/g, '\n').trim();
}

/** A leg's "none" in an empty row is no entry. */
function sameText(a: string, b: string): boolean {
  return a === b || (a === 'none' && b === '') || (a === '' && b === 'none');
}
