import { z } from 'zod';
import { takeBack } from '../document/step/step-parts.ts';
import { connectedRuns } from '../store/connected-runs.ts';
import type { Reader, Tx } from '../store/database.ts';
import { markOf, readChanges, type StepChanges, touchOf } from '../store/design-steps.ts';
import type { Rename, Scope } from '../store/designs.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { once, type Submission } from './once.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';

export const designStepSchema = z.object({
  id: z.string(),
  seq: z.number().int().describe('Of its audit entry.'),
  action: z.string(),
  byName: z.string(),
  at: z.iso.datetime(),
  touches: z.array(z.string()).describe('"run F1-R1-A", "type T1", "level F1" or "job".'),
  undone: z.boolean().describe('It has been taken back, or done again after that.'),
  undoes: z.string().nullable().describe('The step that this one took back.'),
  canUndo: z.boolean().describe('false: taken back already, or too large to be kept.'),
});
export type DesignStepView = z.infer<typeof designStepSchema>;

const MOST_STEPS = 100;

/** The last hundred changes of the design, newest first; of one run alone when it is named. */
export async function listSteps(
  context: Context,
  viewer: Viewer,
  projectId: string,
  run?: string,
): Promise<DesignStepView[]> {
  const { db } = context.database;
  await reach(db, viewer, projectId, 'design');
  const steps = await readSteps(db, projectId);
  return run === undefined ? steps : steps.filter((step) => step.touches.includes(`run ${run}`));
}

/** What the two buttons do: the newest step that stands, and the newest that was taken back. */
export function nextSteps(steps: readonly DesignStepView[]): {
  readonly undo: DesignStepView | null;
  readonly redo: DesignStepView | null;
} {
  const first = steps.find((step) => !(step.undoes !== null && step.undone));
  return {
    undo: steps.find((step) => step.undoes === null && !step.undone) ?? null,
    redo: first?.undoes != null ? first : null,
  };
}

async function readSteps(reader: Reader, projectId: string): Promise<DesignStepView[]> {
  const rows = await reader.designStep.findMany({
    where: { projectId },
    orderBy: { seq: 'desc' },
    take: MOST_STEPS,
    select: { id: true, seq: true, touches: true, undone: true, undoes: true },
  });
  const large = await reader.designStep.findMany({
    where: { id: { in: rows.map((row) => row.id) }, changes: null },
    select: { id: true },
  });
  const entries = await reader.auditEntry.findMany({
    where: { chain: projectId, seq: { in: rows.map((row) => row.seq) } },
    select: { seq: true, action: true, userName: true, at: true },
  });
  const said = new Map(entries.map((entry) => [entry.seq, entry]));
  const tooLarge = new Set(large.map((row) => row.id));
  return rows.map(({ touches, ...row }) => {
    const entry = said.get(row.seq);
    return {
      ...row,
      touches: touches as string[],
      action: entry?.action ?? 'design changed',
      byName: entry?.userName ?? 'system',
      at: (entry?.at ?? new Date(0)).toISOString(),
      canUndo: !row.undone && !tooLarge.has(row.id),
    };
  });
}

/** Takes a step back, and what was taken back again: a change of the design like any other, and a step itself. Released pieces stay until the next release. */
export async function undoStep(
  context: Context,
  viewer: Viewer,
  projectId: string,
  id: string,
  submission: Submission | null,
): Promise<DesignStepView> {
  return context.database.write((tx) =>
    once(tx, context, viewer, submission, async () => {
      await reach(tx, viewer, projectId, 'design');
      const step = await tx.designStep.findFirst({ where: { id, projectId } });
      if (step === null) return refuse({ code: 'not-found', what: 'step' });
      if (step.undone)
        refuse({
          code: 'work-refused',
          what: 'Already undone',
          remedy: 'Look at the steps again: this one was taken back before.',
        });
      if (step.changes === null)
        return refuse({
          code: 'work-refused',
          what: 'Too large to be undone',
          remedy:
            'So much changed in this step that it was not kept. Change it back by a list or by a change of many runs.',
        });
      const changes = readChanges(step.changes);
      await changeDesign(tx, context, projectId, {
        scope: await scopeOf(tx, projectId, changes),
        ...(await restoring(tx, projectId, step.seq, changes)),
        undoes: { id, isUndo: step.undoes !== null },
      });
      await tx.designStep.update({ where: { id }, data: { undone: true } });
      if (step.undoes !== null) await tx.designStep.updateMany({ where: { id: step.undoes }, data: { undone: false } });
      const seq = await audit(tx, context, viewer, {
        chain: projectId,
        action: step.undoes === null ? 'design step undone' : 'design step done again',
        subject: 'project',
        subjectId: projectId,
        after: { step: step.seq, touches: (step.touches as string[]).slice(0, 100) },
      });
      const made = (await readSteps(tx, projectId)).find((one) => one.seq === seq);
      return made ?? refuse({ code: 'not-found', what: 'step' });
    }),
  );
}

async function restoring(tx: Tx, projectId: string, seq: number, { parts, rename }: StepChanges) {
  const since = (await readSteps(tx, projectId)).filter((step) => step.seq > seq);
  return {
    ...(rename === null ? {} : { rename: { noun: rename.noun, from: rename.to, to: rename.from } satisfies Rename }),
    change: (document: Parameters<typeof takeBack>[0]) => {
      const taken = takeBack(document, parts, markOf);
      if (taken.ok) return taken.document;
      const [first] = taken.differing;
      const name = first === undefined ? 'the design' : touchOf(first);
      const by = since.find((step) => step.touches.includes(name));
      const more = taken.differing.length > 1 ? ` and ${taken.differing.length - 1} more` : '';
      return refuse({
        code: 'work-refused',
        what: 'Changed since',
        number: `${name}${more} ${taken.differing.length > 1 ? 'are' : 'is'} not as this step left ${taken.differing.length > 1 ? 'them' : 'it'}${by === undefined ? '' : `: ${by.byName} has changed it since (${by.action}, ${by.at.slice(0, 16).replace('T', ' ')} UTC)`}.`,
        remedy: 'Undo the later step first, or change it by hand. Nothing was written.',
      });
    },
  };
}

/** Runs alone are read with what they are joined to; anything else concerns all runs. */
async function scopeOf(tx: Tx, projectId: string, { parts }: StepChanges): Promise<Scope> {
  if (parts.some((part) => part.noun !== 'run')) return 'all';
  const named = parts.flatMap(({ name, before }) => {
    const feed = before.feed as { readonly fromRun?: string } | undefined;
    return [name, before.pairedRun as string | undefined, feed?.fromRun].filter((key) => key !== undefined);
  });
  return connectedRuns(tx, projectId, named);
}
