import type { JobDocument } from '../document/job-document.ts';
import { withoutMoney } from '../document/money-fence.ts';
import type { Readiness } from '../domain/closeout/readiness.ts';
import { closeoutBook } from './closeout/book.ts';
import type { RunDossier } from './closeout/dossier.ts';
import type { CloseoutJob } from './closeout/job.ts';
import { sayer } from './closeout/say.ts';
import { type DrawnRun, stripFile } from './closeout/strip-of.ts';
import { type AuditLine, auditLine } from './package/audit-line.ts';
import { drawingNamer } from './package/drawing-names.ts';
import { type FileSum, hashedZip, type PackagedFile } from './package/hashed-zip.ts';
import { VERIFY_TEXT } from './package/verify-text.ts';
import { openItemsRegister } from './registers/open-items-register.ts';
import { registerHead, registerRows } from './registers/register.ts';
import { REGISTERS } from './registers/registers.ts';
import { openSpool } from './registers/spool.ts';

export interface CloseoutParts {
  readonly job: CloseoutJob;
  readonly readiness: Readiness;
  /** The design, read when its turn comes. */
  readonly document: () => Promise<JobDocument>;
  readonly levels: number;
  readonly runs: number;
  /** The runs level by level, with their records. */
  readonly dossiers: () => AsyncIterable<RunDossier>;
  /** The same runs again, as far as a drawing needs them: read twice, so that none has to be kept. */
  readonly drawn: () => AsyncIterable<DrawnRun>;
  /** The job's own chain, oldest first. */
  readonly audit: () => AsyncIterable<AuditLine>;
}

/**
 * The closeout package as a stream: book, registers, job document without money, drawings, audit trail, how to verify, and
 * the sums of it all. The same record gives the same bytes: no clock, no chance, entries in a fixed order.
 */
export function closeoutPackage(parts: CloseoutParts): AsyncGenerator<Uint8Array> {
  return hashedZip({
    files: filesOf(parts),
    dated: new Date(parts.job.asOf),
    manifest: (sums) => manifestOf(parts, sums),
  });
}

async function* filesOf(parts: CloseoutParts): AsyncGenerator<PackagedFile> {
  const { job, readiness } = parts;
  const spools = REGISTERS.map((register) => ({ register, spool: openSpool() }));
  for (const { register, spool } of spools) spool.write(registerHead(register));
  const read = async function* () {
    const say = sayer(job.units, job.timeZone);
    for await (const dossier of parts.dossiers()) {
      for (const { register, spool } of spools) spool.write(registerRows(register, dossier, say));
      yield dossier;
    }
  };
  yield { name: 'book.pdf', compress: false, bytes: () => closeoutBook({ ...parts, dossiers: read() }) };
  for (const { register, spool } of spools) yield { name: register.file, bytes: spool.read };
  yield { name: 'registers/open-items.csv', bytes: () => [Buffer.from(openItemsRegister(readiness))] };
  yield { name: 'job-document.json', bytes: () => documentBytes(parts) };
  yield* drawings(parts);
  yield { name: 'audit-trail.jsonl', bytes: () => auditLines(parts) };
  yield { name: 'VERIFY.txt', bytes: () => [Buffer.from(VERIFY_TEXT)] };
}

/** Without money. What an estimator wrote beside an extra may name a price, so the extras' notes stay in the office too. */
async function* documentBytes({ document }: CloseoutParts): AsyncGenerator<Uint8Array> {
  const { extras, labourBook, ...rest } = withoutMoney(await document());
  const unnoted = extras?.map(({ note: _note, ...extra }) => extra);
  const told = {
    ...rest,
    ...(unnoted === undefined ? {} : { extras: unnoted }),
    ...(labourBook === undefined ? {} : { labourBook: { ...labourBook, activities: inOrder(labourBook.activities) } }),
  };
  yield Buffer.from(`${JSON.stringify(told, null, 1)}\n`);
}

/** The one part of the document whose keys are people's own: databases keep them in orders of their own. */
function inOrder<T>(named: Readonly<Record<string, T>>): Record<string, T> {
  return Object.fromEntries(Object.entries(named).sort(([a], [b]) => (a < b ? -1 : 1)));
}

async function* drawings({ job, drawn }: CloseoutParts): AsyncGenerator<PackagedFile> {
  const nameFor = drawingNamer();
  for await (const dossier of drawn()) {
    yield { name: nameFor(dossier.run.id), bytes: () => [Buffer.from(stripFile(dossier, job.units))] };
  }
}

async function* auditLines({ audit }: CloseoutParts): AsyncGenerator<Uint8Array> {
  for await (const entry of audit()) yield Buffer.from(auditLine(entry));
}

function manifestOf({ job, readiness }: CloseoutParts, files: readonly FileSum[]): string {
  const { required, present, percent } = readiness;
  const manifest = {
    format: 'busway-closeout/1',
    job: { number: job.number, name: job.name },
    asOf: job.asOf,
    designVersion: job.designVersion,
    audit: job.audit,
    readiness: { required, present, percent },
    files,
  };
  return `${JSON.stringify(manifest, null, 1)}\n`;
}
