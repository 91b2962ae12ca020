import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { beforeAll, expect, it } from 'vitest';
import { firstCrewPlan } from '../../src/document/crew-plan/first-plan.ts';
import { readCrewForm, writeCrewForm } from '../../src/document/crew-plan/form.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { readPage } from '../support/page.ts';
import { scenarioT2 } from '../support/scenarios.ts';

const plan = {
  ...firstCrewPlan('2026-12-07'),
  holidays: ['2026-12-25'],
  crews: firstCrewPlan('2026-12-07').crews.map((crew, row) => (row === 3 ? crew : { ...crew, lifts: row + 1 })),
  released: [{ level: 'F3', date: '2027-02-01' }],
};

it('a plan written into its form and read back is the same plan, also with what was added by hand', () => {
  expect(readCrewForm(writeCrewForm(plan), ['F1', 'F2', 'F3', 'F4'])).toEqual({ plan });
  const [first, ...rest] = plan.crews;
  const byHand = { ...plan, crews: [{ ...first!, activities: [...first!.activities, 'extra' as const] }, ...rest] };
  expect(readCrewForm(writeCrewForm(byHand), ['F1', 'F2', 'F3', 'F4'])).toEqual({ plan: byHand });
});

it.each([
  ['hoursPerDay', '0', 'hoursPerDay', 'more than 0'],
  ['hoursPerDay', 'eight', 'hoursPerDay', 'A figure is wanted'],
  ['bufferDays', '-1', 'bufferDays', 'Not below 0'],
  ['start', '31.12.2026', 'start', 'A date is wanted'],
  ['crews[1].heads', '', 'crews[1].heads', 'A figure is wanted'],
  ['crews[1].heads', '0', 'crews[1].heads', 'at least one head'],
  ['crews[1].lifts', '-1', 'crews[1].lifts', 'Not below 0'],
  ['crews[1].lifts', 'two', 'crews[1].lifts', 'A figure is wanted'],
  ['activity.joint', '6', 'activity.joint', 'There is no crew 6'],
  ['holidays', '2026-12-25\n26 Dec', 'holidays', 'A date is wanted'],
  ['released.F3', 'soon', 'released.F3', 'A date is wanted'],
])('%s typed as "%s" is told at %s', (field, typed, at, said) => {
  const read = readCrewForm({ ...writeCrewForm(plan), [field]: typed }, ['F1', 'F2', 'F3', 'F4']);
  expect('faults' in read && read.faults.find((fault) => fault.field === at)?.said).toContain(said);
});

forEachDatabase((open) => {
  let play: Stage;
  let id: string;
  beforeAll(async () => {
    play = await stage(await open());
    const { body } = await play.as('ada').post('/api/v1/job-documents').send(scenarioT2());
    id = body.id;
    await play.joinAll(id);
    return () => play.app.close();
  });
  const page = async (person: Parameters<Stage['as']>[0]) =>
    readPage((await play.as(person).get(`/jobs/${id}/crews`)).text);
  const api = () => `/api/v1/projects/${id}/crew-plan`;
  const version = async () => (await play.as('frank').get(api())).body.version;

  it('suggests crews to who may plan, and saves nothing by itself', async () => {
    expect(await page('olive')).toContain('a suggestion: check them and save');
    expect((await play.as('frank').get(api())).body.document).toBeNull();
  });

  it('a saved plan is worked both ways, with dates, for everybody who reads the job and without money', async () => {
    const answer = await play
      .as('olive')
      .put(api())
      .set('if-match', `"${await version()}"`)
      .send(plan);
    expect(answer.status).toBe(200);
    for (const person of ['olive', 'frank', 'rita'] as const) {
      const said = await page(person);
      expect(said, person).toMatch(/No crew stands .*Finish 202\d-\d\d-\d\d, after \d+ working days/);
      expect(said, person).toContain('As soon as possible');
      expect(said, person).toMatch(/Most lifts at once [3-6] /);
      const ahead =
        /From 2026-12-07, no crew standing (.*) From 2026-12-07, as soon as possible (.*) From labour hours/.exec(said);
      for (const way of [ahead?.[1], ahead?.[2]]) expect(way, person).toMatch(/2026-12-07 .*2026-12-24 /);
      expect(said, person).not.toMatch(/\$\d/);
    }
    expect(await page('frank')).not.toContain('Save the plan');
  });

  it('prints three weeks ahead for everybody who reads the job: both ways, every crew, every working day, no money', async () => {
    for (const person of ['olive', 'frank', 'rita'] as const) {
      const answer = await play.as(person).get(`/jobs/${id}/look-ahead.pdf`).buffer(true);
      expect(answer.status, person).toBe(200);
      const pdf = await getDocument({ data: new Uint8Array(answer.body), verbosity: 0 }).promise;
      const sheets = await Promise.all(
        Array.from({ length: pdf.numPages }, async (_, page) => {
          const { items } = await (await pdf.getPage(page + 1)).getTextContent();
          return items.map((item) => ('str' in item ? item.str : '')).join(' ');
        }),
      );
      const said = sheets.join(' ').replace(/\s+/g, ' ');
      expect(said).toContain('no crew stands');
      expect(said).toContain('as soon as possible');
      expect(said).toContain('is invented');
      for (const { name } of plan.crews) expect(said).toContain(name);
      // Three weeks from Monday the 7th: the 25th is a holiday, the 26th and 27th a weekend, and the 28th is past them.
      for (const date of ['2026-12-07', '2026-12-11', '2026-12-24']) expect(said, date).toContain(date);
      for (const date of ['2026-12-12', '2026-12-25', '2026-12-28']) expect(said, date).not.toContain(date);
      expect(said).not.toMatch(/\$\d/);
    }
  });

  it('an older reading, a stranger to the design and a level that is not there are refused', async () => {
    const put = (person: Parameters<Stage['as']>[0], at: number, body: object) =>
      play.as(person).put(api()).set('if-match', `"${at}"`).send(body);
    const now = await version();
    expect((await put('olive', now - 1, plan)).status).toBe(412);
    expect((await put('frank', now, plan)).status).toBe(403);
    const strange = await put('olive', now, { ...plan, released: [{ level: 'F9', date: '2027-01-01' }] });
    expect(strange.status).toBe(422);
    expect(strange.body.errors[0].message).toContain('no level F9');
    expect(await version()).toBe(now);
  });
});
