import type { Readable } from 'node:stream';
import { z } from 'zod';
import { setBackground } from '../../actions/backgrounds.ts';
import type { Context } from '../../actions/context.ts';
import { backgroundViewSchema } from '../../document/background/schema.ts';
import { MOST_BYTES, TAKEN_WORDS } from '../../paper/background/limits.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { itemParams, problems, readVersion, stamp } from './conventions.ts';

const SENT_AS = ['image/png', 'image/jpeg', 'application/pdf', 'application/octet-stream'];
export const APART = 'It is for orientation, not for dimensions, and no part of the job document.';

const sentQuery = z.object({
  page: z.coerce.number().default(1).describe('Of a PDF.'),
  name: z.string().max(400).default('').describe('What the file is called, for people to know it by.'),
});

const setHeaders = z.looseObject({
  'if-match': z.string().optional().describe('The ETag you read; needed where there is a picture already.'),
});
/** Bytes, told in words to whoever reads the description: what they are is seen from themselves. */
const fileBody = z.unknown().meta({ type: 'string', format: 'binary', description: 'The file.' });

/** The picture itself, sent as the body. */
export function backgroundUpload(app: App, context: Context): void {
  app.addContentTypeParser(SENT_AS, async (_request: unknown, payload: Readable) => firstBytes(payload));

  app.put(
    '/projects/:projectId/levels/:id/background/picture',
    {
      schema: {
        tags: ['Levels'],
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
        response: { 200: backgroundViewSchema, ...problems },
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
