import { z } from 'zod';
import {
  backgroundPicture,
  calibrateBackground,
  chooseBackgroundPage,
  removeBackground,
  setBackground,
} from '../../actions/backgrounds.ts';
import type { Context } from '../../actions/context.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import { refuse } from '../../actions/refused.ts';
import { readCalibrationForm } from '../../document/background/calibration-form.ts';
import type { BackgroundView } from '../../document/background/schema.ts';
import { MOST_BYTES } from '../../paper/background/limits.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { KEPT_A_WEEK, sendBackground } from '../send-background.ts';
import { showBackground as show } from './background/show-background.ts';
import { levelParams } from './drawings.ts';
import { attempt, entered, enteredFile, formSubmission, formVersion } from './form.ts';
import { goTo } from './page.ts';

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

function setWords({ kind, page, pages }: BackgroundView): string {
  const done = 'The picture is here. Say by two points where it lies.';
  if (kind !== 'pdf' || pages === 1) return done;
  return `Page ${page} of ${pages} is here; another can be chosen below. Then say by two points where it lies.`;
}
