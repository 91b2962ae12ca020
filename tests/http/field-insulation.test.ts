import { parse } from 'csv-parse/sync';
import { beforeAll, expect, it } from 'vitest';
import type { Person } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { type Floor, RUN, releasedFloor, TEE } from '../support/floor.ts';
import { readPage } from '../support/page.ts';
import { besideFields, formThat, typedInto } from './field-form.ts';

const PAIRS = ['L1-L2', 'L1-L3', 'L2-L3', 'L1-N', 'L2-N', 'L3-N', 'L1-G', 'L2-G', 'L3-G', 'N-G'];
const SHEET = {
  rule: 'acceptance-1000ft',
  instrument: 'IR-02',
  calibrationDue: '2026-11-30',
  testVoltage: '1000',
  duration: '60',
  topRange: '10 GΩ',
  surfaceTemp: '20',
  ambientTemp: '20',
  humidity: '45',
  isolations: ['Source open and locked, or feed lifted', 'Neutral-to-ground bond open'],
};
/** Every pair reads the same, but for those named. */
const readings = (all: string, others: Readonly<Record<string, string>> = {}) =>
  Object.fromEntries(PAIRS.map((pair) => [`value ${pair}`, others[pair] ?? all]));

forEachDatabase((open) => {
  let floor: Floor;
  let path: string;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    path = `/jobs/${floor.projectId}/runs/${await floor.runId(RUN)}/insulation`;
    return () => floor.close();
  });

  const get = async (person: Person, address: string) => (await floor.play.as(person).get(address)).text;
  const send = async (typed: Parameters<typeof typedInto>[1], address = path) => {
    const form = formThat('test', await get('quinn', address));
    return floor.play
      .as('quinn')
      .post(form.action)
      .type('form')
      .redirects(0)
      .send(typedInto(form, { ...SHEET, ...typed }));
  };
  const reportOf = async (answer: Awaited<ReturnType<typeof send>>) => {
    expect(answer.status, besideFields(answer.text)).toBe(303);
    return readPage(await get('quinn', answer.headers.location ?? ''));
  };

  // 100 MΩ for 1 000 ft over 70 ft is 1 428.6 MΩ (ANSI/NETA ATS table 100.1); 100 / 70 is 1.43 MΩ by the busway guide.
  it('before the first test each rule says what it would ask of this very run', async () => {
    const page = readPage(await get('quinn', path));
    expect(page).toContain(`This run, 70'-0": each pair must read at least 1,429 MΩ at 20 °C.`);
    expect(page).toContain(`This run, 70'-0": each pair must read at least 1.429 MΩ at 20 °C.`);
    expect(page).toContain('settles by which rule all its tests are judged');
  });

  it('the sheet has ten pairs of three phases, neutral and ground, each with its comparator and unit', async () => {
    const { fields } = formThat('test', await get('quinn', path));
    for (const pair of PAIRS) expect(fields).toMatchObject({ [`kind ${pair}`]: 'value', [`unit ${pair}`]: 'MΩ' });
    const page = readPage(await get('quinn', `${path}/blank`));
    for (const pair of PAIRS) expect(page).toContain(pair);
    expect(page).toContain('Not measured');
  });

  it('what cannot be read is told beside its box, all at once, and everything typed stays', async () => {
    const refused = await send({
      ...readings('1500', { 'L1-L2': 'about 20', 'L2-N': 'OL' }),
      topRange: '',
      instrument: '',
    });
    expect(refused.status).toBe(422);
    const beside = besideFields(refused.text);
    expect(beside).toContain('“about 20” is no reading.');
    expect(beside).toContain("“OL” says that the meter's range was passed.");
    expect(beside).toContain('Write the number of the test set.');
    expect(refused.text).toContain('value="about 20"');
  });

  it('the wrong test voltage is refused with the one of the table', async () => {
    const refused = await send({ ...readings('1500'), testVoltage: '500' });
    expect(refused.status).toBe(409);
    expect(besideFields(refused.text)).toContain('500 V DC used, 1000 V DC asked');
  });

  it('a temperature in °F asks whether it was meant, and stands when the person says so', async () => {
    const asked = await send({ ...readings('9000'), surfaceTemp: '82' });
    expect(asked.status).toBe(409);
    expect(readPage(asked.text)).toContain('82 °F would be 27.8 °C');
    expect(asked.text).toContain('name="confirmed" value="temperature-high"');
  });

  it('a pair below the limit fails the run, is kept, and shows its working', async () => {
    const report = await reportOf(await send(readings('1500', { 'L3-N': '1400' })));
    expect(report).toContain('fail');
    expect(report).toContain('1400 MΩ; × 1 = 1,400 MΩ at 20 °C; × 0.07 = 98 MΩ for 1,000 ft; at least 100 MΩ asked');
    expect(report).toContain('It permits nobody to energise anything.');
  });

  it('after the first test the rule is printed on top and no other is offered', async () => {
    const page = await get('quinn', path);
    expect(page).not.toMatch(/type="radio"[^>]*name="rule"/);
    expect(readPage(page)).toContain('ANSI/NETA ATS, table 100.1');
  });

  it('a failed test is superseded only with its cause, and stays in the list as failed and replaced', async () => {
    const silent = await send({ ...readings('1500'), replaces: 'yes', cause: '' });
    expect(silent.status).toBe(422);
    expect(besideFields(silent.text)).toContain('Say what was found and put right');
    const cause = '=HYPERLINK("x") moisture at J03, dried';
    const report = await reportOf(await send({ ...readings('1500'), replaces: 'yes', cause }));
    expect(report).toContain('pass');
    const list = readPage(await get('frank', `/jobs/${floor.projectId}/inspections?kind=insulation-test`));
    expect(list).toMatch(/fail Quinn Vale replaced , kept/);
    expect(list).toMatch(/pass Quinn Vale replaces an earlier one/);
    expect(readPage(await get('quinn', path))).toContain('replaced by another test, and kept');
  });

  it('the list goes out as CSV with its formulas made harmless, and narrowed as on the page', async () => {
    const csv = await floor.play.as('frank').get(`/jobs/${floor.projectId}/inspections.csv?kind=insulation-test`);
    expect(csv.headers['content-type']).toContain('text/csv');
    const rows = parse(csv.text, { columns: true }) as Record<string, string>[];
    expect(rows.map((row) => row.outcome)).toEqual(['pass', 'fail']);
    expect(rows[0]?.cause).toBe(`'=HYPERLINK("x") moisture at J03, dried`);
    expect(rows[0]?.['replaces record']).toBe(rows[1]?.record);
  });

  it('the book is narrowed by run, outcome and person', async () => {
    const [piece] = await floor.things('sections', TEE);
    await floor.take('ines', 'piece', piece?.id ?? '', { kind: 'piece-on-site', lot: 'lot 9' });
    const list = async (query: string) => readPage(await get('owen', `/jobs/${floor.projectId}/inspections?${query}`));
    expect(await list(`run=${TEE}`)).toContain(`${TEE}-P01 on site, lot lot 9`);
    expect(await list(`run=${TEE}`)).not.toContain('10 pairs');
    expect(await list('outcome=fail')).toContain('Records · 1,');
    expect(await list(`by=${floor.play.userId('ines')}`)).not.toContain('10 pairs');
  });

  it('a bound, a blank, a pair not measured and a meter fault are four different things', async () => {
    const report = await reportOf(
      await send({
        ...readings('1500', { 'L2-L3': '' }),
        'kind L1-L2': 'more',
        'kind L1-G': 'not-measured',
        'kind L2-G': 'meter-fault',
        whyNot: 'lead broken',
      }),
    );
    expect(report).toContain('incomplete');
    expect(report).toContain('L1-L2 > 1500 MΩ pass');
    expect(report).toContain('L2-L3 blank incomplete, no reading');
    expect(report).toContain('not measured: lead broken');
    expect(report).toContain('meter fault: lead broken');
  });

  it('too near the dew point the readings are information only, and the dew point is worked as it is typed', async () => {
    const worked = readPage(await get('quinn', `${path}/dew-point?surfaceTemp=19&ambientTemp=24&humidity=70`));
    // Magnus: 24 °C at 70 % has its dew point at 18.2 °C; 3 K above it is 21.2 °C.
    expect(worked).toContain('Hold. Dew point 18.2 °C; the surface must be at 21.2 °C at least, and is at 19.0 °C.');
    const report = await reportOf(
      await send({ ...readings('9000'), surfaceTemp: '19', ambientTemp: '24', humidity: '70' }),
    );
    expect(report).toContain('information only');
    expect(report).toContain('too near the dew point');
  });

  it('work after the test makes it stale, and the page names the place', async () => {
    floor.play.setClock('2026-05-12T16:00:00.000Z');
    await send(readings('1500'));
    floor.play.setClock('2026-05-12T17:00:00.000Z');
    const [piece] = await floor.things('sections', RUN);
    await floor.take('ines', 'piece', piece?.id ?? '', { kind: 'piece-hung', conductorSide: 'left' });
    expect(readPage(await get('quinn', path))).toContain(`Stale: work was done after it on ${RUN}-P01. Test again.`);
  });

  it('an installer reads the test and is told who records it', async () => {
    const page = await get('ines', path);
    expect(page).not.toContain('name="do" value="test"');
    expect(readPage(page)).toContain('A foreman, an inspector or the office records the test.');
  });
});
