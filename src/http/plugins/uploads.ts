import type { MultipartFile } from '@fastify/multipart';
import type { FastifyRequest } from 'fastify';
import type { App } from '../app-type.ts';

declare module 'fastify' {
  interface FastifyRequest {
    /** What the sent files are called, by the name of their field: anything that somebody cared to write. */
    fileNames: ReadonlyMap<string, string>;
  }
}

/** Forms with files: their bytes stand in the body, their names here. */
export function uploads(app: App): void {
  app.decorateRequest('fileNames');
  app.addHook('onRequest', async (request) => {
    request.fileNames = new Map();
  });
}

/** Reads a file into the body and remembers what it was called. */
export async function keepFile(this: FastifyRequest, part: MultipartFile): Promise<void> {
  await part.toBuffer();
  this.fileNames = new Map([...this.fileNames, [part.fieldname, part.filename]]);
}
