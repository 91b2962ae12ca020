import { z } from 'zod';
import { getRunChecks } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import {
  getInspection,
  getInsulationRule,
  insulationRuleSchema,
  insulationRuleViewSchema,
  listInspections,
  setInsulationRule,
} from '../../actions/inspections.ts';
import { listOf, pageQuerySchema } from '../../actions/paging.ts';
import { OUTCOMES, recordViewSchema, SUBJECTS } from '../../actions/records/record-view.ts';
import { type TakenRecord, takeRecord } from '../../actions/records.ts';
import { recordBodySchema, recordSchema } from '../../document/record-schema.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { remarkTold, toldSchema } from './cards/card-parts.ts';
import { printRunChecks, runChecksSchema } from './cards/run-checks.ts';
import { changeHeaders, itemParams, problems, projectParams, readVersion, stamp } from './conventions.ts';

const takenSchema = z.object({
  record: recordViewSchema,
  remarks: z
    .array(toldSchema)
    .describe('Worth telling beside it: a tool past its calibration, a limit that is unknown.'),
  stands: z.object({
    mark: z.string(),
    state: z.string().nullable().describe('Of the subject; a run has none, its status is computed.'),
    version: z.number().int(),
  }),
});

const kindSchema = z.enum(
  recordBodySchema.options.map((option) => option.shape.kind.value) as [Kind, ...Kind[]], // a literal each
);
type Kind = z.infer<typeof recordBodySchema>['kind'];

/** The book of records: what was done and found on the floor, appended and never changed. */
export function inspections(app: App, context: Context): void {
  book(app, context);
  runChecks(app, context);
  insulationRule(app, context);
}

function book(app: App, context: Context): void {
  const tags = ['Inspections'];
  app.post(
    '/projects/:projectId/inspections',
    {
      schema: {
        tags,
        summary: 'Record what was done or found',
        description:
          'Joint steps, hangers, tap-offs, ends, tests, acceptances. Taken when the rules of its card hold, else refused with the reason, the number and what to do. ' +
          'The same submissionId sent again gives the first answer again. If-Match may say which reading of the subject the person saw. Nothing recorded here permits anybody to energise anything.',
        params: projectParams,
        headers: changeHeaders,
        body: recordSchema,
        response: { 201: takenSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId } = request.params;
      const seenVersion = request.headers['if-match'] === undefined ? request.body.seenVersion : readVersion(request);
      const taken = await takeRecord(context, viewerOf(request), projectId, { ...request.body, seenVersion });
      stamp(reply, taken.stands.version);
      return reply
        .code(201)
        .header('location', `/api/v1/projects/${projectId}/inspections/${taken.record.id}`)
        .send(told(taken));
    },
  );

  app.get(
    '/projects/:projectId/inspections',
    {
      schema: {
        tags,
        summary: 'Records of a job, newest first',
        params: projectParams,
        querystring: pageQuerySchema.extend({
          run: z.string().optional().describe('The run in the job document, "F1-R1-A".'),
          subject: z.enum(SUBJECTS).optional(),
          subjectId: z.string().optional(),
          kind: kindSchema.optional(),
          outcome: z.enum(OUTCOMES).optional(),
          since: z.iso.datetime({ offset: true }).optional().describe('That reached the book then or later.'),
        }),
        response: { 200: listOf(recordViewSchema), ...problems },
      },
    },
    (request) => listInspections(context, viewerOf(request), request.params.projectId, request.query),
  );

  app.get(
    '/projects/:projectId/inspections/:id',
    { schema: { tags, summary: 'One record', params: itemParams, response: { 200: recordViewSchema, ...problems } } },
    (request) => getInspection(context, viewerOf(request), request.params.projectId, request.params.id),
  );
}

function told({ record, remarks, say, stands }: TakenRecord): z.infer<typeof takenSchema> {
  return { record, stands, remarks: remarks.map((remark) => remarkTold(remark, say)) };
}

function runChecks(app: App, context: Context): void {
  app.get(
    '/projects/:projectId/runs/:id/checks',
    {
      schema: {
        tags: ['Runs'],
        summary: 'Ends, slot, insulation tests and status of a released run',
        params: itemParams,
        response: { 200: runChecksSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      const checks = await getRunChecks(context, viewerOf(request), projectId, id);
      stamp(reply, checks.at.floor.version);
      return printRunChecks(checks);
    },
  );
}

function insulationRule(app: App, context: Context): void {
  const path = '/projects/:projectId/insulation-rule';
  const tags = ['Inspections'];
  app.get(
    path,
    {
      schema: {
        tags,
        summary: 'The rule that judges the insulation tests of a job',
        params: projectParams,
        response: { 200: insulationRuleViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const view = await getInsulationRule(context, viewerOf(request), request.params.projectId);
      stamp(reply, view.version);
      return view;
    },
  );

  app.put(
    path,
    {
      schema: {
        tags,
        summary: 'Choose the rule, before the first test',
        params: projectParams,
        headers: changeHeaders,
        body: insulationRuleSchema,
        response: { 200: insulationRuleViewSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { projectId } = request.params;
      const view = await setInsulationRule(context, viewerOf(request), projectId, readVersion(request), request.body);
      stamp(reply, view.version);
      return view;
    },
  );
}
