import type { FastifyReply, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { LevelPage } from '../../../views/pages/settings/level.tsx';
import { levelEntryWord } from '../../../views/words/level-entries.ts';
import type { Context } from '../../actions/context.ts';
import { jobHeading } from '../../actions/job-heading.ts';
import { changeLevel, createLevel, getLevel, removeLevel } from '../../actions/levels.ts';
import { readLevelForm, writeLevelForm } from '../../document/level-form.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { attempt, entered, formSubmission, formVersion } from './form.ts';
import { jobSheet } from './job-sheet.ts';
import { goTo, sendPage } from './page.ts';
import { type FragmentTried, fragmentProps, lengthExample } from './settings/fragment.ts';

const params = z.object({ jobId: z.string(), levelId: z.string() });
const NEW = 'new';

/** A level as a form; `new` for one that is not there yet. */
export function levelEdit(app: App, context: Context): void {
  const path = '/jobs/:jobId/settings/levels/:levelId';

  app.get(path, { schema: { hide: true, params } }, (request, reply) => show(context, request, reply, null));

  app.post(path, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId, levelId } = request.params;
    const viewer = viewerOf(request);
    const fields = entered(request);
    const { project } = await jobHeading(context, viewer, jobId, 'design');
    const before = levelId === NEW ? null : (await getLevel(context, viewer, jobId, levelId)).document;
    const { level, faults } = readLevelForm(fields, project, before);
    if (faults.length > 0) return show(context, request, reply, { fields, faults });
    const tried = await attempt(async () =>
      levelId === NEW
        ? createLevel(context, viewer, jobId, level, formSubmission(request))
        : changeLevel(context, viewer, jobId, levelId, formVersion(request), level),
    );
    if (!tried.ok) return show(context, request, reply, { fields, faults: [], trouble: tried.trouble });
    return goTo(reply, `/jobs/${jobId}/settings#levels`, `Level ${level.id} is saved.`);
  });

  app.post(`${path}/removal`, { schema: { hide: true, params } }, async (request, reply) => {
    const { jobId, levelId } = request.params;
    const tried = await attempt(async () =>
      removeLevel(context, viewerOf(request), jobId, levelId, formVersion(request)),
    );
    if (!tried.ok) return show(context, request, reply, { fields: {}, faults: [], trouble: tried.trouble });
    return goTo(reply, `/jobs/${jobId}/settings#levels`, 'The level is removed.');
  });
}

async function show(
  context: Context,
  request: FastifyRequest,
  reply: FastifyReply,
  tried: FragmentTried | null,
): Promise<FastifyReply> {
  const { jobId, levelId } = params.parse(request.params);
  const viewer = viewerOf(request);
  const heading = await jobHeading(context, viewer, jobId, 'design');
  const current = levelId === NEW ? null : await getLevel(context, viewer, jobId, levelId);
  const now = current === null ? null : writeLevelForm(current.document, heading.project);
  const settings = `/jobs/${jobId}/settings`;
  const path = `${settings}/levels/${levelId}`;
  const isTyped = tried !== null && Object.keys(tried.fields).length > 0;
  return sendPage(
    request,
    reply,
    {
      ...jobSheet(context, heading, {
        title: current === null ? 'Add a level' : `Level ${current.document.id}`,
        part: 'settings',
        trouble: tried?.trouble,
      }),
      status: tried === null ? 200 : (tried.trouble?.status ?? 422),
    },
    LevelPage({
      ...fragmentProps(context, request, reply, {
        path,
        settings: `${settings}#levels`,
        version: current?.version ?? null,
        tried,
        wordOf: levelEntryWord,
        now,
        removal:
          current === null
            ? null
            : {
                action: `${path}/removal`,
                what: `level ${current.document.id}`,
                question: 'It leaves the job. A level that runs hang on is kept.',
              },
      }),
      entered: isTyped ? tried.fields : (now ?? {}),
      example: lengthExample(heading.project.units),
    }),
  );
}
