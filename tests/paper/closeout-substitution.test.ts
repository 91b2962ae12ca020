import { expect, it } from 'vitest';
import { buildCloseout } from '../../src/actions/closeouts.ts';
import { substitutionBoard } from '../../src/actions/substitution-board.ts';
import { substitute } from '../../src/actions/substitutions.ts';
import { openDatabase } from '../../src/store/database.ts';
import { migratedUrl } from '../support/databases.ts';
import { OLIVE, releasedJob, steadyContext } from './support/built-job.ts';
import { pdfLines } from './support/pdf-text.ts';
import { kept, unpacked } from './support/unpacked.ts';

it('the closeout prints what the floor put in, under the run that has it, and its document holds it', async () => {
  const database = await openDatabase(await migratedUrl('sqlite'));
  const context = steadyContext(database);
  const id = await releasedJob(context);
  const piece = await database.db.piece.findFirstOrThrow({
    where: { projectId: id, mark: 'F1-R05-A-P01' },
    select: { id: true },
  });
  const { open, run } = await substitutionBoard(context, OLIVE, id, piece.id);
  expect(open[0]?.lengths).toHaveLength(2);
  const input = { lengthsMm: [3048, 3048], cause: 'damaged' as const, reason: 'dented' };
  await substitute(context, OLIVE, id, piece.id, run.version, input, null);
  const files = await unpacked(await kept((await buildCloseout(context, OLIVE, id)).stream));
  const book = pdfLines(files.get('book.pdf') ?? Buffer.alloc(0)).join('\n');
  expect(book.match(/Substituted on the floor/g)).toHaveLength(2);
  const document = JSON.parse(files.get('job-document.json')?.toString('utf8') ?? '');
  expect(document.runs.filter((one: { fieldHold?: object }) => one.fieldHold !== undefined)).toHaveLength(1);
  await database.close();
});
