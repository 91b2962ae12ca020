import { z } from 'zod';
import { TakeoffPage, TakeoffTools } from '../../../views/pages/takeoff.tsx';
import { takeoffBoard } from '../../actions/boards/takeoff-board.ts';
import type { Context } from '../../actions/context.ts';
import { takeoffCsv } from '../../document/takeoff-csv.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { sendCsv } from './csv.ts';
import { jobSheet } from './job-sheet.ts';
import { sendPage } from './page.ts';
import { pagerOf, withQuery } from './pager.ts';
import { placesHref } from './takeoff/places-href.ts';

const params = z.object({ jobId: z.string() });
const query = z.object({
  by: z.enum(['job', 'level', 'run']).default('job').catch('job'),
  level: z.string().max(200).default(''),
  page: z.coerce.number().int().min(1).default(1).catch(1),
});
/** A line of a run opens to its own places; one that is added up opens to those of many runs, and takes twice the page. */
const LINES_A_PAGE = { job: 150, level: 150, run: 300 };

/** What to order, as a page and as a file. */
export function takeoff(app: App, context: Context): void {
  app.get('/jobs/:jobId/takeoff', { schema: { hide: true, params, querystring: query } }, async (request, reply) => {
    const { jobId } = request.params;
    const { by, level, page } = request.query;
    const board = await takeoffBoard(context, viewerOf(request), jobId, { by, level });
    const { heading, lines } = board;
    const limit = LINES_A_PAGE[by];
    const first = (page - 1) * limit;
    const shown = lines.slice(first, first + limit);
    const path = `/jobs/${jobId}/takeoff`;
    const listed = { items: shown, total: lines.length, page, limit };
    return sendPage(
      request,
      reply,
      jobSheet(context, heading, {
        title: 'Takeoff',
        part: 'takeoff',
        revision: `design ${heading.designVersion}`,
        tools: TakeoffTools({
          jobId,
          href: withQuery(`${path}.csv`, { level }),
          workbook: `${path}.xlsx`,
          money: heading.reached.may('money'),
        }),
      }),
      TakeoffPage({
        jobId,
        units: heading.project.units,
        by,
        level,
        levels: board.levels,
        lines: shown,
        total: lines.length,
        pager: lines.length > limit ? pagerOf(listed, 'lines', path, { by, level }) : null,
        types: board.types,
        rods: board.rods,
        leftOut: board.leftOut,
        findings: board.findings,
        marksOf: board.marksOf,
        placesHref: (line) => placesHref(jobId, 'takeoff', line, by === 'job' ? level : undefined),
      }),
    );
  });

  app.get(
    '/jobs/:jobId/takeoff.csv',
    { schema: { hide: true, params, querystring: query } },
    async (request, reply) => {
      const { level } = request.query;
      const board = await takeoffBoard(context, viewerOf(request), request.params.jobId, { by: 'run', level });
      const { project } = board.heading;
      return sendCsv(
        reply,
        `${project.number}-takeoff${level === '' ? '' : `-${level}`}`,
        takeoffCsv(board.counted, project.units),
      );
    },
  );
}
