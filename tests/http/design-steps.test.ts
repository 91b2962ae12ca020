import { beforeAll, expect, it } from 'vitest';
import type { RunDocument } from '../../src/document/job-document.ts';
import { forEachDatabase } from '../support/databases.ts';
import { DRAFT, type Floor, RUN, releasedFloor } from '../support/floor.ts';
import { fieldsOf, readPage } from '../support/page.ts';

interface Step {
  readonly id: string;
  readonly action: string;
  readonly byName: string;
  readonly touches: readonly string[];
  readonly canUndo: boolean;
}

forEachDatabase((open) => {
  let floor: Floor;
  let job: string;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    job = `/api/v1/projects/${floor.projectId}`;
    return () => floor.close();
  });
  const as = (person: 'olive' | 'ada' | 'frank' = 'olive') => floor.play.as(person);
  const document = async () => (await as('ada').get(`${job}/document`)).body;
  const runOf = async (key: string): Promise<RunDocument> =>
    (await document()).runs.find((run: RunDocument) => run.id === key);
  const put = async (key: string, change: (run: RunDocument) => RunDocument, person: 'olive' | 'ada' = 'olive') => {
    const url = `${job}/runs/${await floor.runId(key)}`;
    const { body } = await as(person).get(url);
    const changed = await as(person).put(url).set('if-match', `"${body.version}"`).send(change(body.document));
    expect(changed.status, JSON.stringify(changed.body)).toBe(200);
  };
  const steps = async (run?: string): Promise<Step[]> =>
    (await as().get(`${job}/design-steps${run === undefined ? '' : `?run=${run}`}`)).body.items;
  const undo = (id: string, person: 'olive' | 'ada' | 'frank' = 'olive') =>
    as(person).post(`${job}/design-steps/${id}/undo`);

  it('the first import is no step; an edit is one, with who and what', async () => {
    expect(await steps()).toEqual([]);
    await put(DRAFT, (run) => ({ ...run, area: 'north hall' }));
    expect(await steps(DRAFT)).toMatchObject([
      { action: 'run changed', byName: 'Olive Fenn', touches: [`run ${DRAFT}`], canUndo: true },
    ]);
  });

  it('undone, the design is to the letter what it was, with its layout; undoing that does it again', async () => {
    const before = await document();
    const leg = (run: RunDocument) => run.legs[0]!;
    await put(DRAFT, (run) => ({
      ...run,
      taps: [],
      legs: [{ ...leg(run), lengthMm: leg(run).lengthMm - 3048 }, ...run.legs.slice(1)],
    }));
    const changed = await document();
    const [edit] = await steps();
    const taken = await undo(edit!.id);
    expect(taken.status, JSON.stringify(taken.body)).toBe(201);
    expect(await document()).toEqual(before);
    const { lengthMm } = (await as().get(`${job}/runs/${await floor.runId(DRAFT)}`)).body;
    expect(lengthMm).toBe(before.runs.find((run: RunDocument) => run.id === DRAFT).legs[0].lengthMm);
    expect((await undo(edit!.id)).status).toBe(409);
    expect((await undo(taken.body.id)).status).toBe(201);
    expect(await document()).toEqual(changed);
    const again = await undo(edit!.id);
    expect(again.status, JSON.stringify(again.body)).toBe(201);
    expect(await document()).toEqual(before);
  });

  it('what somebody else changed since is not overwritten, and the refusal names them; another entry of the run may be', async () => {
    await put(DRAFT, (run) => ({ ...run, area: 'east hall' }));
    const [mine] = await steps();
    await put(DRAFT, (run) => ({ ...run, area: 'west hall' }), 'ada');
    const refused = await undo(mine!.id);
    expect(refused.status).toBe(409);
    expect(refused.body.title).toBe('Changed since');
    expect(refused.body.detail).toContain(`run ${DRAFT} is not as this step left it: Ada Marsh`);
    expect((await runOf(DRAFT)).area).toBe('west hall');

    await put(DRAFT, (run) => ({ ...run, taps: (run.taps ?? []).slice(1) }));
    const [, area] = await steps();
    expect((await undo(area!.id, 'ada')).status).toBe(201);
    expect((await runOf(DRAFT)).area).toBe('east hall');
    expect((await runOf(DRAFT)).taps).toHaveLength(19);
  });

  it('of two who undo one step at once, one does and one is told', async () => {
    await put(DRAFT, (run) => ({ ...run, area: 'both' }));
    const [step] = await steps();
    const answers = await Promise.all([undo(step!.id), undo(step!.id, 'ada')]);
    expect(answers.map(({ status }) => status).sort()).toEqual([201, 409]);
    expect((await runOf(DRAFT)).area).toBe('east hall');
  });

  it('a run that was taken out comes back, and a new name goes back to the old one', async () => {
    const url = `${job}/runs`;
    const made = await as()
      .post(url)
      .send({ ...(await runOf(DRAFT)), id: 'F1-R30-B', pairedRun: undefined });
    expect(made.status, JSON.stringify(made.body)).toBe(201);
    const path = `${url}/${made.body.id}`;
    const renamed = await as()
      .put(path)
      .set('if-match', '"1"')
      .send({ ...made.body.document, id: 'F1-R31-B' });
    expect(renamed.status).toBe(200);
    const [rename] = await steps();
    expect((await undo(rename!.id)).status).toBe(201);
    const back = (await as().get(path)).body;
    expect(back.key).toBe('F1-R30-B');
    expect((await as().delete(path).set('if-match', `"${back.version}"`)).status).toBe(204);
    const [removed] = await steps();
    expect((await undo(removed!.id)).status).toBe(201);
    expect(await runOf('F1-R30-B')).toEqual(back.document);
  });

  it('undo on a released run changes the design alone: pieces and records stay', async () => {
    const pieces = await floor.things('sections', RUN);
    await put(RUN, (run) => ({ ...run, area: 'released' }));
    const [step] = await steps(RUN);
    expect((await undo(step!.id)).status).toBe(201);
    expect(await floor.things('sections', RUN)).toEqual(pieces);
  });

  it('the pages offer the last change to be taken back, and go back to where the person came from', async () => {
    const id = await floor.runId(DRAFT);
    const page = (path: string, person: 'olive' | 'frank' = 'olive') =>
      as(person).get(`/jobs/${floor.projectId}${path}`);
    await put(DRAFT, (run) => ({ ...run, area: 'by the page' }));
    const shown = await page(`/runs/${id}`);
    expect(readPage(shown.text)).toContain('Undo run changed, Olive Fenn');
    expect((await page(`/runs/${id}`, 'frank')).text).not.toContain('/undo');
    expect((await page('/steps', 'frank')).status).toBe(403);
    const [step] = await steps(DRAFT);
    const undoing = await as()
      .post(`/jobs/${floor.projectId}/steps/${step!.id}/undo?from=${id}`)
      .type('form')
      .send(fieldsOf((await page('/steps')).text));
    expect(undoing.status).toBe(303);
    expect(undoing.headers.location).toContain(`/runs/${id}?done=`);
    expect((await runOf(DRAFT)).area).not.toBe('by the page');
    expect(readPage((await page(`/runs/${id}`)).text)).toContain('Do again change undone, Olive Fenn');
  });

  it('a price that changes is undone by the office and told to nobody else', async () => {
    const { items } = (await as().get(`${job}/busway-types`)).body;
    const url = `${job}/busway-types/${items[0].id}`;
    const { body, headers } = await as().get(url);
    const prices = { ...body.document.prices, jointKit: 987_654_321 };
    const changed = await as()
      .put(url)
      .set('if-match', headers.etag ?? '')
      .send({ ...body.document, prices });
    expect(changed.status, JSON.stringify(changed.body)).toBe(200);
    const [step] = await steps();
    expect((await as('frank').get(`${job}/design-steps`)).status).toBe(403);
    expect((await undo(step!.id, 'frank')).status).toBe(403);
    expect((await undo(step!.id)).status).toBe(201);
    expect((await as().get(url)).body.document).toEqual(body.document);
    const told = await as('frank').get(`${job}/audit`);
    expect(JSON.stringify(told.body)).not.toContain('987654321');
  });
});
