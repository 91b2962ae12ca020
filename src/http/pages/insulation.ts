import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { DewPointSaid } from '../../../views/pages/field/insulation/dew-point-said.tsx';
import type { TestLine } from '../../../views/pages/field/insulation/tests.tsx';
import { InsulationPage } from '../../../views/pages/field/insulation.tsx';
import { InsulationBlank } from '../../../views/pages/field/insulation-blank.tsx';
import { renderFragment } from '../../../views/shell/page.tsx';
import { lastTestSet } from '../../actions/boards/field/last-entries.ts';
import { getRunChecks, type RunChecks } from '../../actions/cards.ts';
import type { Context } from '../../actions/context.ts';
import {
  type CriterionResult,
  INSULATION_RULES,
  type InsulationRule,
  insulationCriterion,
} from '../../domain/quality/insulation/criterion.ts';
import { dewPointC } from '../../domain/quality/insulation/dew-point.ts';
import { pairsOf } from '../../domain/quality/insulation/pairs.ts';
import type { Verdict } from '../../domain/quality/insulation/verdict.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { cardPage } from './field/card-of.ts';
import { fieldEntries, readFigure } from './field/entries.ts';
import { fieldSheet } from './field/field-sheet.ts';
import { readInsulationTest } from './field/read-insulation-test.ts';
import { type BesideField, type PageTrouble, takeRecordForm } from './field/take-record.ts';
import { goTo, sendPage } from './page.ts';

const params = z.object({ jobId: z.string(), runId: z.string() });
const PATH = '/jobs/:jobId/runs/:runId/insulation';
const schema = { hide: true, params };

/** The insulation test of a run. */
export function insulation(app: App, context: Context): void {
  app.get(PATH, { schema }, (request, reply) => show(context, request, reply, null));
  dewPoint(app);
  blank(app, context);

  app.post(PATH, { schema }, async (request, reply) => {
    const { jobId, runId } = request.params;
    const entries = fieldEntries(request);
    const view = await getRunChecks(context, viewerOf(request), jobId, runId);
    const { body, supersedes } = readInsulationTest(entries, view);
    const took = await takeRecordForm(
      context,
      request,
      jobId,
      entries,
      { subject: 'run', subjectId: runId, body, supersedes },
      { form: 'test', beside: BESIDE },
    );
    if (!took.ok) return show(context, request, reply, took.trouble);
    return goTo(reply, `/jobs/${jobId}/inspections/${took.taken.recordId}`, 'The test is recorded and judged.');
  });
}

const BESIDE: BesideField = {
  'insulation.test-voltage': 'testVoltage',
  'insulation.temperature-outside': 'surfaceTemp',
  'insulation.humidity-outside': 'humidity',
};

/** Worked as the figures are typed; nothing is recorded. */
function dewPoint(app: App): void {
  const figures = z.object({
    surfaceTemp: z.string().max(20).default(''),
    ambientTemp: z.string().max(20).default(''),
    humidity: z.string().max(20).default(''),
  });
  app.get(`${PATH}/dew-point`, { schema: { ...schema, querystring: figures } }, async (request, reply) => {
    viewerOf(request);
    const { surfaceTemp, ambientTemp, humidity } = request.query;
    const worked = dewPointOf(surfaceTemp, ambientTemp, humidity);
    const said = worked === null ? '' : renderFragment(DewPointSaid({ dewPoint: worked }));
    return reply.type('text/html; charset=utf-8').send(said);
  });
}

function dewPointOf(surface: string, ambient: string, humidity: string) {
  const [air, percent] = [readFigure(ambient.trim()), readFigure(humidity.trim())];
  if (air === null || percent === null || percent <= 0 || percent > 100 || air < -45 || air > 60) return null;
  return { dewPointC: dewPointC(air, percent), surfaceTempC: readFigure(surface.trim()) };
}

function blank(app: App, context: Context): void {
  app.get(`${PATH}/blank`, { schema }, async (request, reply) => {
    const { jobId, runId } = request.params;
    const view = await getRunChecks(context, viewerOf(request), jobId, runId);
    const { where, shared } = await cardPage(context, request, reply, jobId, view);
    const { floor, insulation: site } = view.at;
    return sendPage(
      request,
      reply,
      fieldSheet(context, where, { title: `Insulation test of ${floor.key}`, theme: 'office' }),
      InsulationBlank({
        say: shared.say,
        length: site.length,
        rule: view.rule.rule,
        criteria: criteriaOf(view),
        pairs: pairsOf(site.conductors),
        type: floor.type.id,
      }),
    );
  });
}

function criteriaOf({ at }: RunChecks): Readonly<Record<InsulationRule, CriterionResult>> {
  const of = (rule: InsulationRule) => insulationCriterion({ ...at.insulation, rule });
  const [acceptance, guide, iec] = INSULATION_RULES;
  return { [acceptance]: of(acceptance), [guide]: of(guide), [iec]: of(iec) };
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  trouble: PageTrouble | null,
): Promise<FastifyReply> {
  const { jobId, runId } = params.parse(request.params);
  const viewer = viewerOf(request);
  const view = await getRunChecks(context, viewer, jobId, runId);
  const { floor, insulation: site } = view.at;
  const [{ where, shared }, last] = await Promise.all([
    cardPage(context, request, reply, jobId, view),
    lastTestSet(context.database.db, jobId, viewer.userId),
  ]);
  const typed = (name: string) => trouble?.entered(name)[0] ?? '';
  return sendPage(
    request,
    reply,
    fieldSheet(context, where, { title: `Insulation test of ${floor.key}`, trouble }),
    InsulationPage({
      ...shared,
      path: `/jobs/${jobId}/runs/${runId}/insulation`,
      version: site.version,
      runKey: floor.key,
      length: site.length,
      rule: view.rule.rule,
      criteria: criteriaOf(view),
      pairs: pairsOf(site.conductors),
      tests: testLines(jobId, view),
      last,
      dewPoint: dewPointOf(typed('surfaceTemp'), typed('ambientTemp'), typed('humidity')),
      questions: trouble?.refusal?.code === 'insulation.question-open' ? trouble.refusal.args.questions : [],
      mayTest: shared.viewer.mayAccept,
      trouble,
    }),
  );
}

function testLines(jobId: string, { tests }: RunChecks): TestLine[] {
  return tests.map(({ record, counts, stands, staleBecause }) => ({
    id: record.id,
    href: `/jobs/${jobId}/inspections/${record.id}`,
    at: record.at,
    by: record.by.name,
    verdict: verdictOf(record.outcome),
    stands: counts ? 'counts' : stands ? 'older' : 'replaced',
    staleBy: [...new Set(staleBecause.map(({ mark }) => mark))].slice(0, 5),
  }));
}

/** A test without a verdict never proves anything. */
export function verdictOf(outcome: string | null): Verdict {
  return outcome === 'pass' || outcome === 'fail' || outcome === 'information-only' ? outcome : 'incomplete';
}
