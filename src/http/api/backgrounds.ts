import type { Readable } from 'node:stream';
import { z } from 'zod';
import {
  backgroundPicture,
  calibrateBackground,
  chooseBackgroundPage,
  getBackground,
  removeBackground,
  setBackground,
} from '../../actions/backgrounds.ts';
import type { Context } from '../../actions/context.ts';
import { backgroundViewSchema, calibrationBodySchema } from '../../document/background/schema.ts';
import { MOST_BYTES, TAKEN_WORDS } from '../../paper/background/limits.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { ASKED_ANEW, sendBackground } from '../send-background.ts';
import { changeHeaders, itemParams, problems, readVersion, stamp } from './conventions.ts';

const tags = ['Levels'];
const path = '/projects/:projectId/levels/:id/background';
const SENT_AS = ['image/png', 'image/jpeg', 'application/pdf', 'application/octet-stream'];
const response = { 200: backgroundViewSchema, ...problems };
const APART = 'It is for orientation, not for dimensions, and no part of the job document.';

const sentQuery = z.object({
  page: z.coerce.number().default(1).describe('Of a PDF.'),
  name: z.string().max(400).default('').describe('What the file is called, for people to know it by.'),
});

const setHeaders = z.looseObject({
  'if-match': z.string().optional().describe('The ETag you read; needed where there is a picture already.'),
});
/** Bytes, told in words to whoever reads the description: what they are is seen from themselves. */
const fileBody = z.unknown().meta({ type: 'string', format: 'binary', description: 'The file.' });

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
  void app.register(async (bytes) => sending(bytes as App, context));
}

function sending(app: App, context: Context): void {
  app.addContentTypeParser(SENT_AS, async (_request: unknown, payload: Readable) => firstBytes(payload));

  app.put(
    `${path}/picture`,
    {
      schema: {
        tags,
        summary: 'Put a picture under a level’s plan',
        description:
          `The file itself as the body. ${TAKEN_WORDS} What it is, is told from its bytes. A page of a PDF is drawn here; the picture that ` +
          `is kept is a new PNG without anything else of the file. ${APART} A calibration goes with the picture that it belonged to. ` +
          'If-Match is needed where there is a picture already.',
        consumes: SENT_AS,
        params: itemParams,
        querystring: sentQuery,
        headers: setHeaders,
        body: fileBody,
        response,
      },
    },
    async (request, reply) => {
      const { projectId, id } = request.params;
      const { page, name } = request.query;
      const seen = request.headers['if-match'] === undefined ? null : readVersion(request);
      const bytes = request.body instanceof Uint8Array ? request.body : new Uint8Array();
      const sent = { bytes, name, page };
      const view = await setBackground(context, viewerOf(request), projectId, id, seen, sent, null);
      stamp(reply, view.version);
      return view;
    },
  );
}

/** A body as far as it can be taken, and one byte more for whoever tells that it was too long. */
async function firstBytes(payload: Readable): Promise<Buffer> {
  const parts: Buffer[] = [];
  let length = 0;
  for await (const part of payload) {
    if (length <= MOST_BYTES) parts.push(part as Buffer);
    length += (part as Buffer).length;
  }
  return Buffer.concat(parts).subarray(0, MOST_BYTES + 1);
}
