import { z } from 'zod';
import {
  backgroundPicture,
  calibrateBackground,
  chooseBackgroundPage,
  getBackground,
  removeBackground,
} from '../../actions/backgrounds.ts';
import type { Context } from '../../actions/context.ts';
import { backgroundViewSchema, calibrationBodySchema } from '../../document/background/schema.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { ASKED_ANEW, sendBackground } from '../send-background.ts';
import { APART, backgroundUpload } from './background-upload.ts';
import { changeHeaders, itemParams, problems, readVersion, stamp } from './conventions.ts';

const tags = ['Levels'];
const path = '/projects/:projectId/levels/:id/background';
const response = { 200: backgroundViewSchema, ...problems };

/** The picture under a level's plan. */
export function backgrounds(app: App, context: Context): void {
  app.get(
    path,
    {
      schema: {
        tags,
        summary: 'The picture under a level’s plan',
        description: `What it is and where it lies; ${APART[0]?.toLowerCase()}${APART.slice(1)}`,
        params: itemParams,
        response,
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      const view = await getBackground(context, viewerOf(request), projectId, id);
      stamp(reply, view.version);
      return view;
    },
  );

  app.get(
    `${path}/picture`,
    {
      schema: {
        tags,
        summary: 'The picture under a level’s plan as PNG',
        produces: ['image/png'],
        params: itemParams,
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      const kept = await backgroundPicture(context, viewerOf(request), projectId, id);
      return sendBackground(reply, kept, ASKED_ANEW);
    },
  );

  app.put(
    `${path}/calibration`,
    {
      schema: {
        tags,
        summary: 'Say by two points where the picture lies',
        description:
          'Scale, turn and place follow from the points; never a shear or a mirror image. `notes` of the answer tells what is odd.',
        params: itemParams,
        headers: changeHeaders,
        body: calibrationBodySchema,
        response,
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      const viewer = viewerOf(request);
      const view = await calibrateBackground(context, viewer, projectId, id, readVersion(request), request.body);
      stamp(reply, view.version);
      return view;
    },
  );

  app.put(
    `${path}/page`,
    {
      schema: {
        tags,
        summary: 'Show another page of the PDF that was sent',
        description: 'While `otherPages` is true: until a page is calibrated.',
        params: itemParams,
        headers: changeHeaders,
        body: z.strictObject({ page: z.number().int() }),
        response,
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      const viewer = viewerOf(request);
      const version = readVersion(request);
      const view = await chooseBackgroundPage(context, viewer, projectId, id, version, request.body.page);
      stamp(reply, view.version);
      return view;
    },
  );

  app.delete(
    path,
    {
      schema: {
        tags,
        summary: 'Take the picture away from under a level’s plan',
        params: itemParams,
        headers: changeHeaders,
        response: { 204: z.void(), ...problems },
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      await removeBackground(context, viewerOf(request), projectId, id, readVersion(request));
      return reply.code(204).send();
    },
  );

  // Bytes are taken as a body here alone.
  void app.register(async (bytes) => backgroundUpload(bytes as App, context));
}
