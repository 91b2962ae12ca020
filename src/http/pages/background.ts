import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { BackgroundPage } from '../../../views/pages/plan/background.tsx';
import { backgroundEntryWord } from '../../../views/words/background.ts';
import {
  backgroundPicture,
  calibrateBackground,
  chooseBackgroundPage,
  findBackground,
  removeBackground,
  setBackground,
} from '../../actions/backgrounds.ts';
import { levelPlan } from '../../actions/boards/level-plan.ts';
import type { Context } from '../../actions/context.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import { refuse } from '../../actions/refused.ts';
import { readCalibrationForm, writeCalibrationForm } from '../../document/background/calibration-form.ts';
import type { BackgroundView } from '../../document/background/schema.ts';
import type { EntryFault } from '../../document/form/entries.ts';
import { MOST_BYTES, TAKEN_WORDS } from '../../paper/background/limits.ts';
import type { App } from '../app-type.ts';
import { assetVersion } from '../plugins/assets.ts';
import { formToken } from '../plugins/sessions.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { KEPT_A_WEEK, sendBackground } from '../send-background.ts';
import { levelParams } from './drawings.ts';
import { attempt, type Entered, entered, enteredFile, type FormTrouble, formSubmission, formVersion } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';
import { lengthExample } from './settings/fragment.ts';

const path = '/jobs/:jobId/floors/:levelId/background';
const schema = { hide: true, params: levelParams };
const fileParams = levelParams.extend({ file: z.string().max(80) });
/** A file that is too large is cut off here and refused by the action, with the limit and what to do. */
const multipartOptions = { limits: { fileSize: MOST_BYTES + 1 }, throwFileSizeLimit: false };

/** The picture under a level's plan: sent, calibrated, shown, taken away. */
export function backgroundPages(app: App, context: Context): void {
  app.get(path, { schema }, (request, reply) => show(context, request, reply, null));

  app.get(`${path}/:file`, { schema: { hide: true, params: fileParams } }, async (request, reply) => {
    const { jobId, levelId, file } = request.params;
    const kept = await backgroundPicture(context, viewerOf(request), jobId, levelId);
    if (file !== `${kept.sha256}.png`) return refuse({ code: 'not-found', what: 'picture' });
    return sendBackground(reply, kept, KEPT_A_WEEK);
  });

  app.post(path, { schema, config: { multipartOptions } }, async (request, reply) => {
    const { jobId, levelId } = request.params;
    const { page = '', version } = entered(request);
    const sent = {
      bytes: enteredFile(request, 'file') ?? new Uint8Array(),
      name: request.fileNames.get('file') ?? '',
      page: page.trim() === '' ? 1 : Number(page),
    };
    const tried = await attempt(() => {
      const seen = version === undefined ? null : formVersion(request);
      return setBackground(context, viewerOf(request), jobId, levelId, seen, sent, formSubmission(request));
    });
    if (!tried.ok) return show(context, request, reply, { of: 'file', fields: { page }, trouble: tried.trouble });
    return goTo(reply, request.url.split('?')[0] ?? '', setWords(tried.value));
  });

  app.post(`${path}/page`, { schema }, async (request, reply) => {
    const { jobId, levelId } = request.params;
    const { page = '' } = entered(request);
    const tried = await attempt(() =>
      chooseBackgroundPage(context, viewerOf(request), jobId, levelId, formVersion(request), Number(page)),
    );
    if (!tried.ok) return show(context, request, reply, { of: 'page', fields: { page }, trouble: tried.trouble });
    return goTo(reply, request.url.replace(/\/page.*$/, ''), `Page ${tried.value.page} is shown.`);
  });

  app.post(`${path}/calibration`, { schema }, async (request, reply) => {
    const { jobId, levelId } = request.params;
    const viewer = viewerOf(request);
    const fields = entered(request);
    const { project } = await jobHeading(context, viewer, jobId, 'design');
    const read = readCalibrationForm(fields, project);
    if (!read.ok) return show(context, request, reply, { of: 'calibration', fields, faults: read.faults });
    const tried = await attempt(() =>
      calibrateBackground(context, viewer, jobId, levelId, formVersion(request), read.body),
    );
    if (!tried.ok) return show(context, request, reply, { of: 'calibration', fields, trouble: tried.trouble });
    return goTo(reply, request.url.replace(/\/calibration.*$/, ''), 'The picture is set in place under the plan.');
  });

  app.post(`${path}/removal`, { schema }, async (request, reply) => {
    const { jobId, levelId } = request.params;
    const tried = await attempt(() =>
      removeBackground(context, viewerOf(request), jobId, levelId, formVersion(request)),
    );
    if (!tried.ok) return show(context, request, reply, { of: 'removal', fields: {}, trouble: tried.trouble });
    return goTo(reply, request.url.replace(/\/background.*$/, '/plan'), 'The picture is removed; the plan stays.');
  });
}

/** A form that came back, and why. */
interface Tried {
  readonly of: 'file' | 'page' | 'calibration' | 'removal';
  readonly fields: Entered;
  readonly faults?: readonly EntryFault[];
  readonly trouble?: FormTrouble;
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  tried: Tried | null,
): Promise<FastifyReply> {
  const { jobId, levelId } = levelParams.parse(request.params);
  const viewer = viewerOf(request);
  const [plan, background] = await Promise.all([
    levelPlan(context, viewer, jobId, levelId),
    findBackground(context, viewer, jobId, levelId),
  ]);
  const { heading, level } = plan;
  const { project, reached } = heading;
  const base = `/jobs/${jobId}/floors/${levelId}`;
  const faults = faultsOf(tried);
  const typed = tried?.of === 'calibration' ? tried.fields : null;
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, {
        title: `Picture under the plan of ${level.name}`,
        part: 'floors',
        // What is wrong with an entry stands at the head of the page and beside the entry.
        trouble: tried?.trouble?.refusal.code === 'invalid' ? undefined : tried?.trouble,
        trail: [
          { word: 'Jobs', href: '/jobs' },
          { word: reached.number, href: `/jobs/${jobId}/floors` },
          { word: level.name, href: `/jobs/${jobId}/floors/${levelId}` },
          { word: 'Plan', href: `${base}/plan` },
        ],
      }),
      status: tried === null ? 200 : (tried.trouble?.status ?? 422),
    },
    BackgroundPage({
      base: `${base}/background`,
      planHref: `${base}/plan`,
      assets: `/assets/${assetVersion()}`,
      csrf: formToken(reply),
      submissionId: context.newId(),
      mayDesign: reached.may('design'),
      units: project.units,
      zone: project.timeZone ?? null,
      example: lengthExample(project.units),
      taken: TAKEN_WORDS,
      background,
      calibration: typed ?? writeCalibrationForm(background?.calibration ?? null, project.units),
      page: tried?.of === 'file' || tried?.of === 'page' ? (tried.fields.page ?? '') : '',
      summary: faults.map(({ field, said }) => ({
        field: tried?.of === 'page' ? 'f-other-page' : `f-${field.replace(/[^A-Za-z0-9_-]/g, '-')}`,
        label: backgroundEntryWord(field),
        message: said,
      })),
      faultOf: (form, name) => (form === tried?.of ? faults.find((fault) => fault.field === name)?.said : undefined),
      places: plan.runs.flatMap(({ id, path: way }) => {
        const [start, end] = [way[0], way.at(-1)];
        return start === undefined || end === undefined ? [] : [{ run: id, start, end }];
      }),
    }),
  );
}

function faultsOf(tried: Tried | null): readonly EntryFault[] {
  const refused = (tried?.trouble?.faults ?? []).map(({ path: field, message, remedy }) => ({
    field,
    said: `${message} ${remedy}`.trim(),
  }));
  return [...(tried?.faults ?? []), ...refused];
}

function setWords({ kind, page, pages }: BackgroundView): string {
  const done = 'The picture is here. Say by two points where it lies.';
  if (kind !== 'pdf' || pages === 1) return done;
  return `Page ${page} of ${pages} is here; another can be chosen below. Then say by two points where it lies.`;
}
