import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { ListsPage, type OneListProps } from '../../../views/pages/lists.tsx';
import type { Context } from '../../actions/context.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import {
  exportList,
  type ListOf,
  previewRunList,
  previewTapList,
  takeRunList,
  takeTapList,
} from '../../actions/lists.ts';
import type { RunDocument } from '../../document/job-document.ts';
import type { RunTap } from '../../document/lists/preview.ts';
import { writeMm } from '../../document/lists/write-mm.ts';
import { RUN_HEADINGS, RUN_HEADINGS_NEEDED } from '../../document/lists/write-runs.ts';
import { TAP_HEADINGS, TAP_HEADINGS_NEEDED } from '../../document/lists/write-taps.ts';
import type { UnitSystem } from '../../domain/model.ts';
import type { App } from '../app-type.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { sendCsv } from './csv.ts';
import { attempt, entered, enteredFile, type FormTrouble, formSubmission } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string() });
const listParams = params.extend({ of: z.enum(['runs', 'taps']) });

/** Runs and tap-offs from a spreadsheet, and back into one. */
export function lists(app: App, context: Context): void {
  app.get('/jobs/:jobId/lists', { schema: { hide: true, params } }, (request, reply) =>
    show(context, request, reply, request.params.jobId, {}),
  );

  for (const of of ['runs', 'taps'] as const)
    app.get(`/jobs/:jobId/lists/${of}.csv`, { schema: { hide: true, params } }, async (request, reply) => {
      const { number, text } = await exportList(context, viewerOf(request), request.params.jobId, of);
      return sendCsv(reply, `${number}-${of === 'runs' ? 'runs' : 'tap-offs'}`, text);
    });

  app.post('/jobs/:jobId/lists/:of', { schema: { hide: true, params: listParams } }, async (request, reply) => {
    const { jobId, of } = request.params;
    const file = enteredFile(request, 'file');
    const text = file === null ? (entered(request).text ?? '') : new TextDecoder().decode(file);
    const tried = await attempt(() => readList(context, request, jobId, of, text));
    return tried.ok
      ? show(context, request, reply, jobId, { list: tried.value })
      : show(context, request, reply, jobId, { trouble: tried.trouble });
  });

  app.post('/jobs/:jobId/lists/:of/taken', { schema: { hide: true, params: listParams } }, async (request, reply) => {
    const { jobId, of } = request.params;
    const { text = '' } = entered(request);
    const take = of === 'runs' ? takeRunList : takeTapList;
    const tried = await attempt(() => take(context, viewerOf(request), jobId, text, formSubmission(request)));
    if (tried.ok) {
      const { made } = tried.value;
      const things = of === 'runs' ? (made === 1 ? 'run is' : 'runs are') : made === 1 ? 'tap-off is' : 'tap-offs are';
      return goTo(reply, `/jobs/${jobId}/floors`, `${made} ${things} made and laid out.`);
    }
    if (tried.trouble.refusal.code !== 'invalid')
      return show(context, request, reply, jobId, { trouble: tried.trouble, list: emptyList(of, text) });
    // The job has changed since the preview: the list is read against it once more, cell by cell.
    return show(context, request, reply, jobId, { list: await readList(context, request, jobId, of, text) });
  });
}

interface Tried {
  readonly list?: OneListProps;
  readonly trouble?: FormTrouble;
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  jobId: string,
  { list, trouble }: Tried,
): Promise<FastifyReply> {
  const heading = await jobHeading(context, viewerOf(request), jobId);
  const status = trouble?.status ?? (list !== undefined && list.faults.length > 0 ? 422 : 200);
  const lists = (['runs', 'taps'] as const).map((of) => (list?.of === of ? list : emptyList(of, '')));
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, { title: 'Lists', part: 'lists', trouble }),
      status,
      lede: 'Pasted from a spreadsheet or read from a file. Nothing is made before you have seen what will be.',
    },
    ListsPage({
      jobId,
      units: heading.project.units,
      csrf: formToken(reply),
      mayDesign: heading.reached.may('design'),
      headings: {
        runs: RUN_HEADINGS.map((name) => ({ name, needed: RUN_HEADINGS_NEEDED.includes(name) })),
        taps: TAP_HEADINGS.map((name) => ({ name, needed: TAP_HEADINGS_NEEDED.includes(name) })),
      },
      lists: [...lists].sort((a, b) => Number(b.of === list?.of) - Number(a.of === list?.of)),
    }),
  );
}

function emptyList(of: ListOf, text: string): OneListProps {
  return { of, text, faults: [], preview: null };
}

async function readList(
  context: Context,
  request: FastifyRequest,
  jobId: string,
  of: ListOf,
  text: string,
): Promise<OneListProps> {
  const viewer = viewerOf(request);
  const { project } = await jobHeading(context, viewer, jobId);
  const submissionId = context.newId();
  if (of === 'runs') {
    const read = await previewRunList(context, viewer, jobId, text);
    if (!read.ok) return { of, text, faults: read.faults, preview: null };
    const { preview, questions } = read;
    const levels = preview.levels.map(({ level, runs, lengthMm }) => ({ level, count: runs, lengthMm }));
    const first = preview.first.map((run) => runCells(run, project.units));
    return { of, text, faults: [], preview: { submissionId, total: preview.runs, levels, first, questions } };
  }
  const read = await previewTapList(context, viewer, jobId, text);
  if (!read.ok) return { of, text, faults: read.faults, preview: null };
  const { preview, questions } = read;
  const levels = preview.levels.map(({ level, taps }) => ({ level, count: taps }));
  const first = preview.first.map((tap) => tapCells(tap, project.units));
  return { of, text, faults: [], preview: { submissionId, total: preview.taps, levels, first, questions } };
}

function runCells(run: RunDocument, units: UnitSystem) {
  return cells({
    Run: run.id,
    Level: run.level,
    'Busway type': run.type,
    Side: run.side ?? '',
    'Conductor side': run.conductorSide,
    Feed: run.feed.kind === 'tee' ? `tee from ${run.feed.fromRun ?? ''}` : `${run.feed.kind} feed`,
    Legs: run.legs
      .map((leg) => `${writeMm(leg.lengthMm, units)}${leg.turn === 'none' ? '' : `, ${leg.turn}`}`)
      .join('; '),
  });
}

function tapCells({ run, tap }: RunTap, units: UnitSystem) {
  return cells({
    'Tap-off': tap.id,
    Run: run,
    At: tap.near === undefined ? writeMm(tap.atMm, units) : 'nearest to what it serves',
    Phases: tap.phases,
    Device: `${tap.deviceA} A`,
    Load: tap.loadVA === undefined ? `${tap.loadA} A` : `${tap.loadVA} VA`,
    Serves: tap.serves ?? '',
  });
}

function cells(row: Readonly<Record<string, string>>) {
  return Object.entries(row).map(([head, text]) => ({ head, text }));
}
