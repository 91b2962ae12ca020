import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { LabourBookPage } from '../../../views/pages/labour-book.tsx';
import { labourBookEntryWord } from '../../../views/words/labour-book-entries.ts';
import type { Context } from '../../actions/context.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import { getLabourBook, setLabourBook } from '../../actions/labour-books.ts';
import { BOOK_VERSION, CONDITION_ROWS, CREW_ROWS } from '../../document/labour-book-form/entries.ts';
import { readLabourBookForm, writeLabourBookForm } from '../../document/labour-book-form/form.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, formVersion } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';
import { type FragmentTried, fragmentProps } from './settings/fragment.ts';

const params = z.object({ jobId: z.string() });
/** A book that is not there yet has version 0, which no form carries: it is sent as 1 more. */
const sentVersion = (version: number) => version + 1;

/** The labour book of a job as a form. Office only: it holds the crew's rates. */
export function labourBook(app: App, context: Context): void {
  const path = '/jobs/:jobId/labour-book';

  app.get(path, { schema: { hide: true, params } }, (request, reply) => show(context, request, reply, null));

  app.post(path, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId } = request.params;
    const viewer = viewerOf(request);
    const fields = entered(request);
    const { project } = await jobHeading(context, viewer, jobId, 'money');
    const { document } = await getLabourBook(context, viewer, jobId);
    const { book, faults } = readLabourBookForm(fields, project, document);
    if (faults.length > 0) return show(context, request, reply, { fields, faults });
    const tried = await attempt(async () => setLabourBook(context, viewer, jobId, formVersion(request) - 1, book));
    if (!tried.ok) {
      const { trouble } = tried;
      const named = trouble.faults.map((fault) => ({ ...fault, path: fieldOf(fault.path) }));
      return show(context, request, reply, { fields, faults: [], trouble: { ...trouble, faults: named } });
    }
    return goTo(reply, `/jobs/${jobId}/hours`, `Labour book ${book.version} is saved, and the hours are worked anew.`);
  });
}

/** The book's own version has another name in the form than the record's. Faults write `activities["end-cap"].low`, fields are named `activities.end-cap.low`. */
function fieldOf(path: string): string {
  return path
    .replace(/\["([^"]+)"\]/g, '.$1')
    .replace(/(activities\.[^.]+\.bands).*/, '$1')
    .replace(/(factors\.height).*/, '$1')
    .replace(/^version$/, BOOK_VERSION);
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  tried: FragmentTried | null,
): Promise<FastifyReply> {
  const { jobId } = params.parse(request.params);
  const viewer = viewerOf(request);
  const heading = await jobHeading(context, viewer, jobId, 'money');
  const { version, document } = await getLabourBook(context, viewer, jobId);
  const { units, currency } = heading.project;
  const now = document === null ? {} : writeLabourBookForm(document, heading.project);
  const path = `/jobs/${jobId}/labour-book`;
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, { title: 'Labour book', part: 'hours', trouble: tried?.trouble }),
      status: tried === null ? 200 : (tried.trouble?.status ?? 422),
    },
    LabourBookPage({
      ...fragmentProps(context, request, reply, {
        path,
        settings: `/jobs/${jobId}/hours`,
        version: sentVersion(version),
        tried,
        wordOf: labourBookEntryWord,
        now,
        removal: null,
      }),
      entered: tried?.fields ?? now,
      units,
      currency,
      crewRows: Math.max(CREW_ROWS, document?.crew?.length ?? 0),
      conditionRows: Math.max(CONDITION_ROWS, document?.jobConditions?.length ?? 0),
    }),
  );
}
