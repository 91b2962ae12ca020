import { createHash } from 'node:crypto';
import { PassThrough, Readable } from 'node:stream';
import { ZipFile } from 'yazl';
import { sha256SumsOf } from './sha256-sums.ts';

/** A file of the package: its bytes are asked for when its turn comes, and hashed as they pass. */
export interface PackagedFile {
  readonly name: string;
  readonly bytes: () => AsyncIterable<Uint8Array> | Iterable<Uint8Array>;
  /** false for what is compressed already. */
  readonly compress?: boolean;
}

export interface FileSum {
  readonly name: string;
  readonly bytes: number;
  readonly sha256: string;
}

export interface ZipInput {
  /** In the order of the package; names are unique. */
  readonly files: AsyncIterable<PackagedFile> | Iterable<PackagedFile>;
  /** The day that every entry is dated with: never today's, so that equal content gives equal bytes. */
  readonly dated: Date;
  /** Written behind all other files, from their sums. */
  readonly manifest: (sums: readonly FileSum[]) => string;
}

export const MANIFEST = 'manifest.json';
export const SUMS = 'SHA256SUMS';

/**
 * A ZIP archive as a stream, with `manifest.json` and `SHA256SUMS` behind the files they speak of. Nothing is held but what
 * is passing. Entries carry the DOS date alone, without zone and owner, so that the same content gives the same bytes on any
 * machine.
 */
export async function* hashedZip({ files, dated, manifest }: ZipInput): AsyncGenerator<Uint8Array> {
  const zip = new ZipFile();
  const output = zip.outputStream.pipe(new PassThrough());
  zip.on('error', (error) => output.destroy(error instanceof Error ? error : new Error(String(error))));
  const filled = fill(zip, files, dosNoon(dated), manifest);
  filled.catch((error) => output.destroy(error));
  for await (const chunk of output) yield chunk;
  await filled;
}

async function fill(
  zip: ZipFile,
  files: ZipInput['files'],
  mtime: Date,
  manifest: ZipInput['manifest'],
): Promise<void> {
  const sums: FileSum[] = [];
  for await (const file of files) sums.push(await addFile(zip, file, mtime));
  const written = { name: MANIFEST, bytes: () => [Buffer.from(manifest(sums))] };
  sums.push(await addFile(zip, written, mtime));
  await addFile(zip, { name: SUMS, bytes: () => [Buffer.from(sha256SumsOf(sums))] }, mtime);
  zip.end();
}

/** Adds one file and waits until the archive has taken all of it, so that the next is not read before its turn. */
function addFile(zip: ZipFile, { name, bytes, compress = true }: PackagedFile, mtime: Date): Promise<FileSum> {
  return new Promise((resolve, reject) => {
    const hash = createHash('sha256');
    let length = 0;
    async function* passing() {
      for await (const chunk of bytes()) {
        hash.update(chunk);
        length += chunk.length;
        yield chunk;
      }
    }
    const stream = Readable.from(passing(), { objectMode: false });
    stream.on('error', reject);
    stream.on('end', () => resolve({ name, bytes: length, sha256: hash.digest('hex') }));
    zip.addReadStream(stream, name, { mtime, mode: 0o100644, compress, forceDosTimestamp: true });
  });
}

/** Noon of the day in UTC, said in local parts, because that is what the archive's format writes. */
function dosNoon(at: Date): Date {
  return new Date(at.getUTCFullYear(), at.getUTCMonth(), at.getUTCDate(), 12);
}
