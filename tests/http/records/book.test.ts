import { randomUUID } from 'node:crypto';
import { beforeAll, expect, it } from 'vitest';
import { firstBreak } from '../../../src/actions/audit.ts';
import type { RunDocument } from '../../../src/document/job-document.ts';
import { forEachDatabase } from '../../support/databases.ts';
import {
  BRANCH,
  CHECK,
  DRAFT,
  type Floor,
  floorJob,
  hung,
  RUN,
  releasedFloor,
  SET,
  stepBody,
} from '../../support/floor.ts';

const NOW = '2026-05-12T13:00:00.000Z';

forEachDatabase((open) => {
  let floor: Floor;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    return () => floor.close();
  });
  const firstOf = async (noun: 'sections' | 'joints' | 'supports', run: string) =>
    (await floor.things(noun, run))[0]?.id ?? '';
  const count = async (query = '') => (await floor.play.as('rita').get(`${floor.job}/inspections?${query}`)).body.total;
  const envelope = (subjectId: string, more = {}) => ({
    submissionId: randomUUID(),
    at: NOW,
    subject: 'support',
    subjectId,
    body: SET,
    ...more,
  });
  const post = (person: Parameters<Floor['send']>[0], sent: object) =>
    floor.play.as(person).post(`${floor.job}/inspections`).send(sent);

  it('a record sent twice is kept once, and the second sending gets the first answer', async () => {
    const sent = envelope(await firstOf('supports', 'F2-R01-A'));
    const [first, second] = [await post('ines', sent), await post('ines', sent)];
    expect([first.status, second.status]).toEqual([201, 201]);
    expect(second.body).toEqual(first.body);
    expect(await count(`subjectId=${sent.subjectId}`)).toBe(1);
  });

  it('a double tap, both at the same moment, makes one record', async () => {
    const [, second] = await floor.things('supports', 'F2-R01-A');
    const sent = envelope(second?.id ?? '');
    const answers = await Promise.all([post('ines', sent), post('ines', sent), post('ines', sent)]);
    expect(answers.map((answer) => answer.status)).toEqual([201, 201, 201]);
    expect(new Set(answers.map((answer) => answer.body.record.id)).size).toBe(1);
    expect(await count(`subjectId=${sent.subjectId}`)).toBe(1);
  });

  it('the first answer comes again even after the card has moved on', async () => {
    const [, , third] = await floor.things('supports', 'F2-R01-A');
    const sent = envelope(third?.id ?? '');
    const first = await post('ines', sent);
    await floor.take('quinn', 'support', third?.id ?? '', { kind: 'support-accepted' });
    expect((await post('ines', sent)).body).toEqual(first.body);
  });

  it('the same submission with another body is refused, and so is somebody else’s', async () => {
    const [, , , fourth, fifth] = await floor.things('supports', 'F2-R01-A');
    const sent = envelope(fourth?.id ?? '');
    await post('ines', sent);
    const other = await post('ines', { ...sent, subjectId: fifth?.id });
    expect([other.status, other.body.type]).toEqual([422, '/problems/key-reused']);
    expect((await post('ivan', sent)).body.type).toBe('/problems/key-reused');
    expect(await count(`subjectId=${fifth?.id}`)).toBe(0);
  });

  it('eight people at once on eight hangers are all kept, and the trail still chains', async () => {
    const supports = (await floor.things('supports', 'F2-R02-A')).slice(0, 8);
    const answers = await Promise.all(supports.map(({ id }) => post('ines', envelope(id))));
    expect(answers.map((answer) => answer.status)).toEqual(supports.map(() => 201));
    expect(await firstBreak(floor.play.context.database.db, floor.projectId)).toBeNull();
  });

  it('a reader, an owner and a stranger record nothing; an inspector installs nothing and an installer accepts nothing', async () => {
    const id = await firstOf('supports', 'F2-R03-A');
    const status = async (person: 'rita' | 'owen' | 'stan' | 'quinn') => (await post(person, envelope(id))).status;
    expect(await status('rita')).toBe(403);
    expect(await status('owen')).toBe(403);
    expect(await status('stan')).toBe(404);
    expect(await status('quinn')).toBe(403);
    await post('ines', envelope(id));
    const accepted = await floor.send('ivan', 'support', id, { kind: 'support-accepted' });
    expect(accepted.status).toBe(403);
    expect(accepted.body.detail).toContain('inspect');
    expect((await floor.card('supports', id)).history).toHaveLength(1);
  });

  it('a record on a run that was never released is not found, nor one on another job’s', async () => {
    const draft = await floor.send('ines', 'run', await floor.runId(DRAFT), { kind: 'slot-closed' });
    expect(draft.status).toBe(404);
    const other = floorJob();
    const made = await floor.play
      .as('ada')
      .post('/api/v1/job-documents')
      .send({ ...other, project: { ...other.project, number: 'DEMO-2' } });
    const elsewhere = `/api/v1/projects/${made.body.id}`;
    await floor.play
      .as('ada')
      .post(`${elsewhere}/releases`)
      .send({ runs: [RUN] });
    const foreign = (await floor.play.as('ada').get(`${elsewhere}/supports`)).body.items[0].id;
    expect((await post('ines', envelope(foreign))).status).toBe(404);
    expect((await floor.play.as('ines').get(`${elsewhere}/supports`)).status).toBe(404);
    expect((await floor.play.as('rita').get(`${floor.job}/supports/${foreign}`)).status).toBe(404);
  });

  it('work of the future is refused; a clock some minutes ahead is not', async () => {
    const id = await firstOf('supports', 'F2-R04-A');
    const late = await post('ines', envelope(id, { at: '2026-05-12T13:06:00.000Z' }));
    expect(late.body).toMatchObject({ status: 409, reason: 'record.in-future' });
    expect(late.body.detail).toContain('08:06');
    const skewed = await post('ines', envelope(id, { at: '2026-05-12T08:04:00-05:00' }));
    expect(skewed.status).toBe(201);
    expect(skewed.body.record).toMatchObject({ at: '2026-05-12T13:04:00.000Z', recordedAt: NOW });
  });

  it('work dated before what was recorded there already is refused', async () => {
    const id = await firstOf('sections', 'F2-R04-A');
    await floor.take('ines', 'piece', id, { kind: 'piece-on-site' });
    const early = await floor.send('ines', 'piece', id, hung('left'), { at: '2026-05-12T12:59:00.000Z' });
    expect(early.body).toMatchObject({ status: 409, reason: 'record.before-previous' });
  });

  it('every record has its entry in the audit trail, and a refused one has none', async () => {
    const trail = async () => (await floor.play.as('quinn').get(`${floor.job}/audit?limit=500`)).body;
    const before = await trail();
    const id = await firstOf('sections', 'F2-R05-A');
    const taken = await floor.take('ines', 'piece', id, hung('left'));
    await floor.send('ines', 'piece', id, hung('left'));
    const after = await trail();
    expect([after.total, after.firstBreak]).toEqual([before.total + 1, null]);
    expect(after.items[0]).toMatchObject({
      action: 'piece-hung',
      subject: 'piece',
      subjectId: id,
      userName: 'Ines Holt',
    });
    expect(after.items[0].after).toMatchObject({ mark: 'F2-R05-A-P01', state: 'hung', body: hung('left') });
    const records = await floor.play.context.database.db.inspection.findMany({ where: { projectId: floor.projectId } });
    const seqs = new Set(records.map((row) => row.seq));
    const entries = await floor.play.context.database.db.auditEntry.findMany({
      where: { chain: floor.projectId, seq: { in: [...seqs] } },
    });
    expect(entries).toHaveLength(records.length);
    expect(records.find((row) => row.id === taken.record.id)?.seq).toBe(after.items[0].seq);
  });

  it('records are listed newest first, by run, subject, kind, outcome and time', async () => {
    const all = await floor.play.as('rita').get(`${floor.job}/inspections?limit=500`);
    expect(all.body.total).toBe(all.body.items.length);
    expect(await count('run=F2-R05-A')).toBe(1);
    expect(await count('subject=piece&kind=piece-hung')).toBe(1);
    expect(await count('outcome=fail')).toBe(0);
    expect(await count(`since=${encodeURIComponent('2026-05-12T13:00:00.001Z')}`)).toBe(0);
    expect(await count(`since=${encodeURIComponent(NOW)}`)).toBe(all.body.total);
    const [last] = all.body.items;
    const one = await floor.play.as('rita').get(`${floor.job}/inspections/${last.id}`);
    expect(one.body).toEqual(last);
    expect((await floor.play.as('rita').get(`${floor.job}/inspections?limit=2&page=2`)).body.items).toEqual(
      all.body.items.slice(2, 4),
    );
  });

  it('sections, joints, hangers and tap-offs are listed along each run, by level and state, with their version as ETag', async () => {
    const list = async (path: string) => (await floor.play.as('rita').get(`${floor.job}/${path}`)).body;
    const row = (await list(`sections?run=${RUN}`)).items;
    expect(row.map((one: { mark: string }) => one.mark)).toEqual([1, 2, 3, 4].map((n) => `${RUN}-P0${n}`));
    expect(row.map((one: { lengthMm: number }) => one.lengthMm)).toEqual([6096, 6096, 6096, 3048]);
    expect((await list('joints?level=F3')).items.every((one: { level: string }) => one.level === 'F3')).toBe(true);
    expect((await list('sections?state=hung')).items.map((one: { run: string }) => one.run)).toEqual(['F2-R05-A']);
    expect((await list('taps?run=none')).total).toBe(0);
    const [tap] = (await list(`taps?run=${RUN}`)).items;
    const card = await floor.play.as('rita').get(`${floor.job}/taps/${tap.id}`);
    expect([card.headers.etag, card.body.document.phases]).toEqual([`"${tap.version}"`, 'L1']);
    expect((await floor.play.as('rita').get(`${floor.job}/joints?state=nonsense`)).status).toBe(422);
  });

  it('the demand for records is in OpenAPI, with every kind', async () => {
    const { paths, components } = (await floor.play.as('rita').get('/api/v1/openapi.json')).body;
    const text = JSON.stringify([paths['/api/v1/projects/{projectId}/inspections'], components]);
    for (const kind of ['joint-step', 'insulation-test', 'record-withdrawn']) expect(text).toContain(kind);
  });

  it('after a new release what stayed keeps its records, what left is read and not written, and a section with a new joint is no longer accepted', async () => {
    const run = 'F2-R05-A';
    await floor.hangAll(run);
    const joints = await floor.things('joints', run);
    for (const { id } of joints) {
      await floor.makeJoint(id);
      await floor.acceptJoint(id);
    }
    const states = async () => (await floor.things('sections', run)).map((row) => row.state);
    expect(await states()).toEqual(['accepted', 'accepted', 'accepted', 'accepted']);
    const id = await floor.runId(run);
    const read = await floor.play.as('olive').get(`${floor.job}/runs/${id}`);
    const document: RunDocument = read.body.document;
    // 20/20/20/10 becomes 20/20/20/5: the last piece and its joint leave.
    const shorter = {
      ...document,
      legs: [{ lengthMm: 65 * 304.8, turn: 'none' }],
      taps: (document.taps ?? []).filter((tap) => (tap.atMm ?? 0) < 62 * 304.8),
    };
    const changed = await floor.play
      .as('olive')
      .put(`${floor.job}/runs/${id}`)
      .set('if-match', read.headers.etag ?? '')
      .send(shorter);
    expect(changed.status, JSON.stringify(changed.body)).toBe(200);
    const released = await floor.play
      .as('olive')
      .post(`${floor.job}/releases`)
      .send({ runs: [run] });
    expect(released.status, JSON.stringify(released.body)).toBe(201);
    const after = await floor.things('sections', run);
    expect(after.map((row) => row.toMm - row.fromMm)).toEqual([6096, 6096, 6096, 1524]);
    expect(await states()).toEqual(['accepted', 'accepted', 'hung', 'planned']);
    const left = joints[3]?.id ?? '';
    const old = await floor.card('joints', left);
    expect([old.retired, old.acts, old.history.length]).toEqual([true, [], CHECK + 2]);
    const refused = await floor.send('frank', 'joint', left, { kind: 'joint-reopened', reason: 'no longer there' });
    expect(refused.status).toBe(404);
    expect((await floor.play.as('rita').get(`${floor.job}/joints?run=${run}&retired=true`)).body.total).toBe(1);
    expect((await floor.card('joints', joints[0]?.id ?? '')).state).toBe('accepted');
    expect((await floor.things('joints', run)).map((row) => row.state)).toEqual([
      'accepted',
      'accepted',
      'accepted',
      'open',
    ]);
  });

  it('a page hands in work as done now, so that a double tap without a time is still one record', async () => {
    const { takeRecord } = await import('../../../src/actions/records.ts');
    const { context, userId } = floor.play;
    const ines = { userId: userId('ines'), name: 'Ines Holt', email: '', administrator: false };
    const id = await firstOf('sections', BRANCH);
    const sent = {
      submissionId: randomUUID(),
      at: null,
      subject: 'piece' as const,
      subjectId: id,
      seenVersion: null,
      supersedes: null,
      body: { kind: 'piece-on-site' as const, lot: null },
    };
    const first = await takeRecord(context, ines, floor.projectId, sent);
    floor.play.setClock('2026-05-12T13:00:02.000Z');
    expect(await takeRecord(context, ines, floor.projectId, sent)).toEqual(first);
    expect(first.record.at).toBe(NOW);
  });

  it('a person who lost the role meanwhile records nothing more', async () => {
    const { db } = floor.play.context.database;
    const key = { projectId: floor.projectId, userId: floor.play.userId('ivan') };
    await db.membership.update({ where: { projectId_userId: key }, data: { role: 'reader' } });
    const id = await firstOf('joints', BRANCH);
    expect((await floor.send('ivan', 'joint', id, stepBody(0))).status).toBe(403);
  });
});
