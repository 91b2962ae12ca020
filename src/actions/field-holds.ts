import { connectedRuns } from '../store/connected-runs.ts';
import { audit } from './audit.ts';
import type { Context, Viewer } from './context.ts';
import { changeDesign } from './designs.ts';
import { reach } from './reach.ts';
import { refuse } from './refused.ts';
import { assertVersion } from './version.ts';

/**
 * Lets go of what the floor substituted: the run's sections are chosen freely again. A change of the design like any other,
 * which can be undone; the floor keeps the sections that it has until the run is released again.
 */
export async function letGoOfHold(
  context: Context,
  viewer: Viewer,
  projectId: string,
  runId: string,
  version: number,
): Promise<void> {
  await context.database.write(async (tx) => {
    await reach(tx, viewer, projectId, 'design');
    const run = await tx.run.findFirst({ where: { projectId, id: runId }, select: { key: true, version: true } });
    if (run === null) return refuse({ code: 'not-found', what: 'run' });
    assertVersion(run, version);
    const { before } = await changeDesign(tx, context, projectId, {
      scope: await connectedRuns(tx, projectId, [run.key]),
      change: (design) => ({
        ...design,
        runs: design.runs.map((one) => {
          if (one.id !== run.key) return one;
          const { fieldHold: _held, ...free } = one;
          return free;
        }),
      }),
    });
    const held = before.runs.find((one) => one.id === run.key)?.fieldHold;
    if (held === undefined)
      return refuse({
        code: 'work-refused',
        what: 'Nothing is held',
        number: `Run ${run.key} is not kept to anything that the floor substituted.`,
        remedy: 'Look at the run again: somebody has let go of it already.',
      });
    await audit(tx, context, viewer, {
      chain: projectId,
      action: 'substitution let go',
      subject: 'run',
      subjectId: runId,
      before: held,
    });
  });
}
