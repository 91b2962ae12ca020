import { beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { fieldsOf } from '../support/page.ts';

/** Each form: a field, what nobody can mean by it, and two values that can be. */
const FORMS = [
  ['level', '', 'order', 'first', '7', '8'],
  ['busway type', '', 'weightKgPerM', 'heavy', '8', '9'],
  ['labour book', '/labour-book', 'activities.tap.likely', 'soon', '0.41', '0.42'],
  ['crew plan', '/crews', 'hoursPerDay', 'long', '9', '7'],
  ['rules for ordering', '/takeoff/rules', 'washersPerRod', 'some', '2', '3'],
  ['bid', '/bid', 'overheadPercent', 'much', '11', '12'],
] as const;

forEachDatabase((open) => {
  let play: Stage;
  let job: string;
  const paths = new Map<string, string>();
  beforeAll(async () => {
    play = await stage(await open());
    const { body } = await play.as('ada').post('/api/v1/job-documents').send(demoJob());
    await play.joinAll(body.id);
    job = `/jobs/${body.id}`;
    const { db } = play.context.database;
    const level = await db.level.findFirstOrThrow({ where: { projectId: body.id } });
    const type = await db.buswayType.findFirstOrThrow({ where: { projectId: body.id } });
    paths.set('level', `/settings/levels/${level.id}`);
    paths.set('busway type', `/settings/types/${type.id}`);
    return () => play.app.close();
  });

  it.each(FORMS)(
    '%s: a form that came back with a fault does not overwrite what was saved meanwhile',
    async (...of) => {
      const [name, path, field, fault, theirs, mine] = of;
      const at = `${job}${path === '' ? paths.get(name) : path}`;
      const post = (person: 'olive' | 'ada', fields: Record<string, string>) =>
        play.as(person).post(at).type('form').send(fields);
      const form = async () => fieldsOf((await play.as('olive').get(at)).text);
      // The plan of a job that has none yet is made first.
      if (name === 'crew plan')
        expect((await post('olive', { ...(await form()), start: '2026-12-07' })).status).toBe(303);
      const opened = await form();
      expect((await post('ada', { ...opened, [field]: theirs })).status).toBe(303);
      const faulty = await post('olive', { ...opened, [field]: fault });
      expect(faulty.status).toBe(422);
      const again = fieldsOf(faulty.text);
      expect(again[field]).toBe(fault);
      const saved = await post('olive', { ...again, [field]: mine });
      expect(saved.status, 'the save is refused as out of date').toBe(412);
      expect((await form())[field]).toContain(theirs);
    },
  );
});
