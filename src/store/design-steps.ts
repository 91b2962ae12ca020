import { createHash } from 'node:crypto';
import { gunzipSync, gzipSync } from 'node:zlib';
import type { JobDocument } from '../document/job-document.ts';
import { type StepPart, stepParts } from '../document/step/step-parts.ts';
import type { Tx } from './database.ts';
import type { Rename } from './designs.ts';

/** What is kept of one change of a design so that it can be taken back. */
export interface StepChanges {
  readonly parts: readonly StepPart[];
  readonly rename: Rename | null;
}

export interface NewStep {
  readonly projectId: string;
  readonly before: JobDocument;
  readonly after: JobDocument;
  readonly rename: Rename | null;
  readonly undoes: { readonly id: string; readonly isUndo: boolean } | null;
  readonly newId: () => string;
}

/** Of JSON, before it is packed: some 1 500 runs taken out at once, or a field of many more. Above it a step cannot be undone. */
export const MOST_STEP_BYTES = 8_000_000;

export function markOf(text: string): string {
  return createHash('sha256').update(text).digest('base64').slice(0, 22);
}

/**
 * Keeps a change as a step, in its transaction. The audit entry that the caller writes next has the step's number, and says
 * who, when and what. A change that changes nothing is no step.
 */
export async function keepStep(tx: Tx, step: NewStep): Promise<void> {
  const { projectId, rename, undoes } = step;
  const parts = stepParts(step.before, step.after, markOf);
  if (parts.length === 0) return;
  const last = await tx.auditEntry.findFirst({
    where: { chain: projectId },
    orderBy: { seq: 'desc' },
    select: { seq: true },
  });
  const text = JSON.stringify({ parts, rename: rename?.from === rename?.to ? null : rename } satisfies StepChanges);
  await tx.designStep.create({
    data: {
      id: step.newId(),
      projectId,
      seq: (last?.seq ?? 0) + 1,
      touches: parts.map(touchOf),
      changes: text.length > MOST_STEP_BYTES ? null : new Uint8Array(gzipSync(text)),
      undoes: undoes?.id ?? null,
      // Doing again what was undone ends the matter: the first step stands once more and can be undone itself.
      undone: undoes?.isUndo ?? false,
    },
  });
}

export function touchOf({ noun, name }: Pick<StepPart, 'noun' | 'name'>): string {
  return noun === 'job' ? 'job' : `${noun} ${name}`;
}

export function readChanges(packed: Uint8Array): StepChanges {
  return JSON.parse(gunzipSync(packed).toString('utf8')) as StepChanges;
}
