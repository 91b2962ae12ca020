import { once } from 'node:events';
import { PassThrough, type Readable } from 'node:stream';
import { promisify } from 'node:util';
import { type Entry, open, type ZipFile } from 'yauzl';

export interface ZippedFile {
  readonly name: string;
  readonly stream: Readable;
}

/** The files of an archive in its own order; each stream must be read to its end before the next file is asked for. */
export async function* readZip(path: string): AsyncGenerator<ZippedFile> {
  const zip = await promisify(open)(path, { lazyEntries: true, autoClose: false });
  try {
    for (;;) {
      const entry = await nextEntry(zip);
      if (entry === null) return;
      yield { name: entry.fileName, stream: closing(await promisify(zip.openReadStream.bind(zip))(entry)) };
    }
  } finally {
    zip.close();
  }
}

async function nextEntry(zip: ZipFile): Promise<Entry | null> {
  const settled = new AbortController();
  const { signal } = settled;
  const next = Promise.race([
    once(zip, 'entry', { signal }).then(([entry]) => entry as Entry),
    once(zip, 'end', { signal }).then(() => null),
  ]);
  zip.readEntry();
  try {
    return await next;
  } finally {
    settled.abort();
  }
}

/** The archive's own streams end without closing, which an asynchronous loop would wait for. */
function closing(stream: Readable): Readable {
  const through = new PassThrough();
  stream.on('error', (error) => through.destroy(error));
  return stream.pipe(through);
}
