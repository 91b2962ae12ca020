import { z } from 'zod';
import { WhatIfPage } from '../../../views/pages/what-if.tsx';
import { activityWord } from '../../../views/words/activities.ts';
import { whatIfEntryWord } from '../../../views/words/what-if.ts';
import type { Context } from '../../actions/context.ts';
import { figuresOf } from '../../actions/figures.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import { whatIf } from '../../actions/what-ifs.ts';
import { GROUPS, readWhatIf } from '../../document/what-if/form.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { sendPage } from './page.ts';

const params = z.object({ jobId: z.string() });
// A field that stands twice in the address counts once, as it does in a form.
const text = z.union([z.string(), z.array(z.string()).transform((all) => all.at(-1) ?? '')]);
const query = z.record(z.string(), text);

/** A change beside the job as it stands: a GET, since it changes nothing. Office only. */
export function whatIfPage(app: App, context: Context): void {
  app.get('/jobs/:jobId/what-if', { schema: { hide: true, params, querystring: query } }, async (request, reply) => {
    const { jobId } = request.params;
    const viewer = viewerOf(request);
    const heading = await jobHeading(context, viewer, jobId, 'money');
    const { document } = await figuresOf(context.database.db, jobId);
    const entered = request.query;
    const read = readWhatIf(entered, heading.project);
    const isAsked = Object.keys(read.change).length > 0;
    const tried =
      isAsked && read.faults.length === 0 ? await attempt(() => whatIf(context, viewer, jobId, read.change)) : null;
    const refused = tried === null || tried.ok ? [] : tried.trouble.faults;
    const faults = [
      ...read.faults,
      ...refused.map(({ path, message, remedy }) => ({ field: read.fieldOf(path), said: `${message} ${remedy}` })),
    ];
    const heads = { title: 'What if', part: 'hours' as const, revision: `design ${heading.designVersion}` };
    return sendPage(
      request,
      reply,
      { ...jobSheet(context, heading, heads), status: faults.length > 0 ? 422 : 200 },
      WhatIfPage({
        jobId,
        currency: heading.project.currency,
        units: heading.project.units,
        book: document.labourBook?.version ?? null,
        entered,
        faultOf: (name) => faults.find(({ field }) => field === name)?.said,
        summary: faults.map(({ field, said }) => ({
          field: `f-${field.replace(/[^A-Za-z0-9_-]/g, '-')}`,
          label: whatIfEntryWord(field),
          message: said,
        })),
        levels: document.levels.map(({ id, name }) => ({ value: id, word: name })),
        types: document.buswayTypes.map(({ id }) => ({ value: id, word: id })),
        activities: Object.keys(document.labourBook?.activities ?? {}).map((id) => ({
          value: id,
          word: activityWord(id as 'joint'),
        })),
        rows: {
          conditions: GROUPS.conditions.rows,
          activities: GROUPS.activities.rows,
          types: GROUPS.types.rows,
          stock: GROUPS.stock.rows,
          routes: GROUPS.routes.rows,
        },
        answer: tried?.ok ? tried.value : null,
      }),
    );
  });
}
