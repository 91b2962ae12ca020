import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { changeBuswayType, listBuswayTypes } from '../../src/actions/busway-types.ts';
import { buildCloseout } from '../../src/actions/closeouts.ts';
import type { Context } from '../../src/actions/context.ts';
import { setLabourBook } from '../../src/actions/labour-books.ts';
import { demoLabourBook } from '../../src/document/demo/demo-labour-book.ts';
import type { BuswayTypeDocument, JobDocument } from '../../src/document/job-document.ts';
import { parseJobDocument } from '../../src/document/parse-job-document.ts';
import { verifyCloseout } from '../../src/paper/verify-closeout.ts';
import { forEachDatabase } from '../support/databases.ts';
import { builtJob, insulationTest, OLIVE, releasedJob, smallJob, steadyContext } from './support/built-job.ts';
import { pdfLines, pdfStreams } from './support/pdf-text.ts';
import { aFolder, bytesOf, kept, unpacked } from './support/unpacked.ts';

const packageOf = async (context: Context, id: string) => kept((await buildCloseout(context, OLIVE, id)).stream);
const bookOf = (files: ReadonlyMap<string, Buffer>) => pdfLines(files.get('book.pdf') ?? Buffer.alloc(0)).join('\n');
const textOf = (files: ReadonlyMap<string, Buffer>, name: string) => files.get(name)?.toString('utf8') ?? '';
const sha = /^[0-9a-f]{64}$/;

/** The first package made on each database, to be set against the other's. */
const made = new Map<string, Buffer>();

forEachDatabase((open, kind) => {
  describe('the package of a job that is built to the last record', () => {
    it('verifies, holds what a closeout is made of, and asks for nothing more', async () => {
      const context = steadyContext(await open());
      const zip = await packageOf(context, await builtJob(context));
      made.set(kind, bytesOf(zip));
      const verified = await verifyCloseout(zip);
      expect(verified).toMatchObject({ ok: true, faults: [], audit: { entries: 4 } });
      const files = await unpacked(zip);
      expect([...files.keys()]).toEqual([
        'book.pdf',
        'registers/runs.csv',
        'registers/sections.csv',
        'registers/joints.csv',
        'registers/hangers.csv',
        'registers/tap-offs.csv',
        'registers/tests.csv',
        'registers/open-items.csv',
        'job-document.json',
        'drawings/F1-R05-A.svg',
        'drawings/F1-R06-A.svg',
        'drawings/F1-R06-A-BR.svg',
        'drawings/F3-R06-A.svg',
        'audit-trail.jsonl',
        'VERIFY.txt',
        'manifest.json',
        'SHA256SUMS',
      ]);
      const newest = await context.database.db.auditEntry.findFirst({
        where: { chain: { not: 'site' } },
        orderBy: { seq: 'desc' },
      });
      const manifest = JSON.parse(textOf(files, 'manifest.json'));
      expect(manifest).toMatchObject({
        format: 'busway-closeout/1',
        job: { number: 'DEMO-1' },
        asOf: newest?.at.toISOString(), // of the trail, and of no clock
        readiness: { required: 229, present: 229, percent: 100 },
      });
      expect(manifest.audit.head).toMatch(sha);
      expect(textOf(files, 'registers/open-items.csv').split('\r\n')).toEqual([
        '\uFEFFrun,what,asked for,missing,how many',
        '',
      ]);
      const document = parseJobDocument(JSON.parse(textOf(files, 'job-document.json')));
      expect(document.ok && document.document.runs.map((run) => run.id)).toEqual([
        'F1-R05-A',
        'F1-R06-A',
        'F1-R06-A-BR',
        'F3-R06-A',
      ]);
    });

    it('is the same to the byte when it is made again, and on the other database', async () => {
      const context = steadyContext(await open());
      const id = await builtJob(context);
      const first = bytesOf(await packageOf(context, id));
      expect(bytesOf(await packageOf(context, id)).equals(first)).toBe(true);
      expect(made.get('sqlite')?.equals(first)).toBe(true);
    });

    it('prints who did what: strips, hangers as planned and measured, torque with its tool, every pair as read', async () => {
      const context = steadyContext(await open());
      const files = await unpacked(await packageOf(context, await builtJob(context)));
      const book = bookOf(files);
      expect(book).toContain('Closeout of job DEMO-1');
      expect(book).toContain('Record only. No permission to energise or to touch.');
      expect(book).toContain('17.7 lbf·ft'); // as written, beside its 24.0 N·m
      expect(book).toContain('T-07, calibrated to 2026-12-31');
      expect(book).toContain('seen at both ends: L1 L2 L3 N');
      expect(book).toContain('> 5000 megohm');
      expect(book).toContain('accepted by Quinn Vale, 2026-06-01 05:00'); // 10:00 UTC in Chicago
      const measured = textOf(files, 'registers/hangers.csv')
        .split('\r\n')
        .map((line) => line.split(','));
      const [, , ...second] = measured[2] ?? []; // every third hanger stands an inch farther than planned
      expect(Number(second[2]) - Number(second[0])).toBeCloseTo(25.4, 4);
      expect(textOf(files, 'registers/tests.csv')).toContain('L2-L3,more than,5000,MΩ');
      expect(textOf(files, 'drawings/F3-R06-A.svg')).toContain('fire wall');
    });

    it('numbers its pages, and its contents lead to each run', async () => {
      const context = steadyContext(await open());
      const pdf =
        (await unpacked(await packageOf(context, await builtJob(context)))).get('book.pdf') ?? Buffer.alloc(0);
      const text = pdf.toString('latin1');
      const pages = Number(/\/Type \/Pages\s*\/Count (\d+)/.exec(text)?.[1]);
      expect(pages).toBeGreaterThan(12);
      // The form that every sheet draws behind its own number.
      expect(pdfStreams(pdf).filter((stream) => stream.includes('/Total Do'))).toHaveLength(pages);
      expect(pdfLines(pdf)).toContain(String(pages));
      // Pages in the order of the book, each with the lines it shows; the contents are drawn last and stand second.
      const sheets = pagesOf(text, pdf);
      const titled = (title: string) => sheets.findIndex((lines) => lines.includes(title)) + 1;
      expect(sheets[0]).toContain('Cautions');
      expect(sheets[1]).toContain('Contents');
      const contents = sheets[1] ?? [];
      const pageIn = (title: string) => contents[contents.indexOf(title) + 1];
      for (const run of ['F1-R05-A', 'F1-R06-A', 'F1-R06-A-BR', 'F3-R06-A']) {
        expect(pageIn(run)).toBe(String(titled(`Run ${run}`)));
      }
      expect(pageIn('Open items')).toBe(
        String(sheets.findIndex((lines, index) => index > 2 && lines.includes('Open items')) + 1),
      );
      expect(text).toContain('/Lang (en)');
      expect(text).toContain('/DisplayDocTitle true');
      expect(text).toContain('/Outlines');
    });

    it('can be checked without the program: by sha256sum, and by the lines of Python that it brings', async () => {
      const context = steadyContext(await open());
      const folder = aFolder();
      for (const [name, bytes] of await unpacked(await packageOf(context, await builtJob(context)))) {
        execFileSync('mkdir', ['-p', path.dirname(path.join(folder, name))]);
        writeFileSync(path.join(folder, name), bytes);
      }
      const sums = execFileSync('sha256sum', ['-c', 'SHA256SUMS'], { cwd: folder, encoding: 'utf8' });
      expect(
        sums
          .trim()
          .split('\n')
          .every((line) => line.endsWith(': OK')),
      ).toBe(true);
      const lines =
        /--- verify\.py\n([\s\S]*?)\n---\n/.exec(bytesOf(path.join(folder, 'VERIFY.txt')).toString('utf8'))?.[1] ?? '';
      const run = () => execFileSync('python3', ['-c', lines], { cwd: folder, encoding: 'utf8', stdio: 'pipe' });
      expect(run()).toMatch(/^the chain holds: 4 entries, head [0-9a-f]{64}\n$/);
      const trail = path.join(folder, 'audit-trail.jsonl');
      writeFileSync(trail, bytesOf(trail).toString('utf8').replace('Olive Fenn', 'Olive Fern'));
      expect(run).toThrow(/the chain breaks at entry 1/);
    });
  });

  describe('a package that was tampered with', () => {
    it('is found out wherever one byte of it was turned', async () => {
      const context = steadyContext(await open());
      const whole = bytesOf(await packageOf(context, await builtJob(context)));
      const file = path.join(aFolder(), 'turned.zip');
      const places = Array.from({ length: 40 }, (_, index) => 60 + Math.floor(((whole.length - 12_000) * index) / 40));
      const held: number[] = [];
      for (const place of places) {
        const turned = Buffer.from(whole);
        turned[place] = (turned[place] ?? 0) ^ 0x10;
        writeFileSync(file, turned);
        if ((await verifyCloseout(file)).ok) held.push(place);
      }
      expect(held).toEqual([]);
    });

    it('is found out when it is no package at all', async () => {
      const file = path.join(aFolder(), 'no.zip');
      writeFileSync(file, 'not an archive');
      expect(await verifyCloseout(file)).toMatchObject({ ok: false, files: 0 });
    });
  });

  describe('a package of a job with prices', () => {
    const SECRET = 7_919_531; // in cents: no other figure of the job has these digits
    const SHOWN = ['7919531', '79195.31', '79,195.31', '79195,31', '7,919,531'];

    it('holds no amount of money, in no file and in no stream of the book, and its trail still verifies', async () => {
      const context = steadyContext(await open());
      const id = await builtJob(context, pricedJob(SECRET));
      const [type] = await listBuswayTypes(context, OLIVE, id, { page: 1, limit: 10 }).then((list) => list.items);
      if (type === undefined) throw new Error('the job has no busway type');
      await changeBuswayType(context, OLIVE, id, type.id, type.version, pricedType(type.document, SECRET));
      await setLabourBook(context, OLIVE, id, 1, pricedBook(SECRET));
      const zip = await packageOf(context, id);
      const verified = await verifyCloseout(zip);
      expect(verified).toMatchObject({ ok: true, audit: { entries: 6 } });
      const files = await unpacked(zip);
      const everything = [...files].flatMap(([name, bytes]) =>
        name === 'book.pdf'
          ? [...pdfStreams(bytes), pdfLines(bytes).join(' '), bytes.toString('latin1')]
          : [bytes.toString('utf8')],
      );
      expect(everything.filter((text) => SHOWN.some((amount) => text.includes(amount)))).toEqual([]);
      const names = /"(?:prices|price|bid|crew|ratePerHour|jointKit|cost)"/;
      expect(textOf(files, 'job-document.json')).not.toMatch(names);
      expect(textOf(files, 'audit-trail.jsonl')).not.toMatch(names);
      // Who touched the prices, and when, stays.
      const touched = textOf(files, 'audit-trail.jsonl')
        .trim()
        .split('\n')
        .map((line) => JSON.parse(line))
        .filter((entry) => entry.money);
      expect(touched.map((entry) => [entry.userName, entry.action, 'before' in entry, 'after' in entry])).toEqual([
        ['Olive Fenn', 'busway type changed', false, false],
        ['Olive Fenn', 'labour book set', false, false],
      ]);
      // The record itself has them, so that the search above could have found them.
      expect(JSON.stringify(await context.database.db.buswayType.findMany())).toContain(String(SECRET));
    });
  });

  describe('a package while others work', () => {
    it('is of one moment: what is changed while it is read is not in it', async () => {
      const context = steadyContext(await open());
      const id = await builtJob(context);
      const before = bytesOf(await packageOf(context, id));
      const { stream } = await buildCloseout(context, OLIVE, id);
      const chunks: Buffer[] = [];
      for await (const chunk of stream) {
        if (chunks.length === 0) await context.database.write((tx) => tx.joint.updateMany({ data: { state: 'open' } }));
        chunks.push(chunk);
      }
      expect(Buffer.concat(chunks).equals(before)).toBe(true);
      expect((await unpacked(await packageOf(context, id))).get('registers/open-items.csv')?.toString()).toContain(
        'not accepted',
      );
    });

    it('gives its turn back when the reader goes away', async () => {
      const context = steadyContext(await open());
      const id = await builtJob(context);
      for (let turn = 0; turn < 4; turn++) {
        const { stream } = await buildCloseout(context, OLIVE, id);
        for await (const _chunk of stream) break;
      }
      const two = [await buildCloseout(context, OLIVE, id), await buildCloseout(context, OLIVE, id)];
      await expect(buildCloseout(context, OLIVE, id)).rejects.toThrow('work-refused');
      for (const { stream } of two) await new Promise((resolve) => stream.once('close', resolve).destroy());
      await expect(packageOf(context, id)).resolves.toMatch(/zip$/);
    });
  });

  describe('a package of a job that is not ready', () => {
    it('is made all the same, and names what is missing', async () => {
      const context = steadyContext(await open());
      const zip = await packageOf(context, await releasedJob(context));
      expect((await verifyCloseout(zip)).ok).toBe(true);
      const files = await unpacked(zip);
      const items = textOf(files, 'registers/open-items.csv').split('\r\n');
      expect(items).toContain('F1-R05-A,F1-R05-A-J01,Joints accepted,not accepted,1');
      expect(items).toContain('F3-R06-A,F3-R06-A,Fire seals,fire seal not reported,1');
      expect(items).toContain('F1-R06-A,F1-R06-A,Insulation tests,no insulation test,1');
      const book = bookOf(files);
      expect(book).toContain('J01, J02, J03, J04');
      expect(book).toContain('no insulation test');
    });

    it('is made of a job without a single run', async () => {
      const context = steadyContext(await open());
      const zip = await packageOf(context, await releasedJob(context, { ...smallJob(), runs: [] }));
      expect(await verifyCloseout(zip)).toMatchObject({
        ok: true,
        manifest: { asOf: expect.stringContaining('2026-05-12') },
      });
    });
  });

  describe('a test that was made again and failed', () => {
    it('stands in the book as failed, with 0.00, a blank and a bound told apart, and the replaced one beside it', async () => {
      const context = steadyContext(await open());
      const id = await builtJob(context);
      const { db } = context.database;
      const first = await db.inspection.findFirstOrThrow({
        where: { projectId: id, kind: 'insulation-test' },
        orderBy: { seq: 'asc' },
      });
      const body = insulationTest({ poles: 3, neutral: 'full' });
      const readings = body.readings.map(({ pair, reading }, index) => {
        if (index === 0)
          return {
            pair,
            reading: {
              kind: 'value' as const,
              comparator: '=' as const,
              value: 0,
              unit: 'MΩ' as const,
              written: '0.00',
            },
          };
        return { pair, reading: index === 1 ? { kind: 'blank' as const } : reading };
      });
      const again = {
        ...first,
        id: 'id-again',
        submissionId: 'again',
        seq: 1_000_000,
        supersedesId: first.id,
        cause: 'read on the wrong run',
        outcome: 'fail',
      };
      await db.inspection.create({ data: { ...again, body: { ...body, readings } } });
      const files = await unpacked(await packageOf(context, id));
      const book = bookOf(files);
      expect(book).toContain('Test of 2026-06-01 09:00: fail');
      expect(book).toContain('Test of 2026-06-01 09:00: pass (replaced by a later record; does not count)');
      expect(book).toContain('0.00 megohm');
      expect(book).toContain('no reading');
      expect(textOf(files, 'registers/open-items.csv')).toContain(
        'F1-R05-A,F1-R05-A,Insulation tests,insulation test failed,1',
      );
      const rows = textOf(files, 'registers/tests.csv')
        .split('\r\n')
        .filter((row) => row.includes('id-again'));
      expect(rows.find((row) => row.includes(',L1-L2,'))).toContain('L1-L2,is,0.00,MΩ');
      expect(rows.find((row) => row.includes(',L1-L3,'))).toContain('L1-L3,,no reading,');
      expect(rows.find((row) => row.includes(',L2-L3,'))).toContain('L2-L3,more than,5000,MΩ');
    });
  });

  describe('names and words that people enter', () => {
    it('never break a file, a table or a spreadsheet', async () => {
      const context = steadyContext(await open());
      const hostile = hostileJob();
      const zip = await packageOf(
        context,
        await builtJob(context, hostile, { fitter: '=HYPERLINK("x")', checker: 'Żółć 山田 \u202Eevil' }),
      );
      expect(await verifyCloseout(zip)).toMatchObject({ ok: true, faults: [] });
      const files = await unpacked(zip);
      expect([...files.keys()].filter((name) => /\.\.\/|^\/|\\/.test(name))).toEqual([]);
      expect(textOf(files, 'registers/hangers.csv')).toContain('"\'=HYPERLINK(""x"")"');
      expect(textOf(files, 'registers/hangers.csv')).not.toMatch(/(^|,)"?=/m);
      expect(textOf(files, 'registers/tap-offs.csv')).toContain('Żółć 山田');
      const book = bookOf(files);
      expect(book).toContain('Zólc [U+5C71][U+7530]');
      expect(book).toContain('U+017B'); // listed on the last sheet
      const long = book.split('\n').filter((line) => /^W{3,}/.test(line));
      expect(long.length).toBeGreaterThan(1); // one word of 200 letters, broken over lines of its column
      expect(textOf(files, 'drawings/_x_script_alert_1_script_~1.svg')).not.toContain('<script');
    });
  });
});

/** The pages of a book in its order, each with its lines. */
function pagesOf(text: string, pdf: Buffer): string[][] {
  const object = (id: string) => new RegExp(`(?:^|\\n)${id} 0 obj\\n([\\s\\S]*?)endobj`).exec(text);
  const kids = /\/Kids \[([^\]]*)\]/.exec(text)?.[1] ?? '';
  return [...kids.matchAll(/(\d+) 0 R/g)].map((kid) => {
    const contents = /\/Contents (\d+) 0 R/.exec(object(kid[1] ?? '')?.[1] ?? '')?.[1] ?? '';
    const found = object(contents);
    return found === null ? [] : pdfLines(pdf.subarray(found.index, found.index + found[0].length));
  });
}

function pricedType(type: BuswayTypeDocument, amount: number): BuswayTypeDocument {
  const sections = type.stockLengthsMm.map((lengthMm) => ({ lengthMm, price: amount }));
  const names = [
    'sectionPerM',
    'cutSurcharge',
    'jointKit',
    'elbow',
    'tee',
    'endFeed',
    'endCap',
    'support',
    'tap',
    'drop',
  ] as const;
  return { ...type, prices: { sections, ...Object.fromEntries(names.map((name) => [name, amount])) } };
}

function pricedBook(amount: number): NonNullable<JobDocument['labourBook']> {
  const book = demoLabourBook();
  return { ...book, crew: (book.crew ?? []).map((member) => ({ ...member, ratePerHour: amount })) };
}

function pricedJob(amount: number): JobDocument {
  const job = smallJob();
  return {
    ...job,
    buswayTypes: job.buswayTypes.map((type) => pricedType(type, amount)),
    extras: [{ item: 'Night shift', quantity: 1, unit: 'lot', price: amount, note: 'quoted 79195.31 by letter' }],
    labourBook: pricedBook(amount),
    bid: { materials: amount, other: amount, supervision: amount, profit: { kind: 'markup', percent: 6 } },
  };
}

function hostileJob(): JobDocument {
  const job = smallJob();
  const name = 'W'.repeat(200);
  const runs = job.runs.slice(0, 1).map((run) => ({
    ...run,
    id: '"/x<script>alert(1)</script>',
    area: '=1+1',
    taps: run.taps?.map((tap) => ({ ...tap, serves: `@SUM(A1) ${'long '.repeat(30)}` })),
  }));
  return {
    ...job,
    project: { ...job.project, number: '../../N 1', name, client: '<b>&amp;' },
    levels: job.levels.slice(0, 1),
    runs,
    extras: [],
  };
}
