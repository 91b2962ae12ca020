import { beforeAll, expect, it } from 'vitest';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { type Stage, stage } from '../support/cast.ts';
import { forEachDatabase } from '../support/databases.ts';
import { readPage } from '../support/page.ts';

forEachDatabase((open) => {
  let play: Stage;
  let path: string;
  beforeAll(async () => {
    play = await stage(await open());
    const { body } = await play.as('ada').post('/api/v1/job-documents').send(demoJob());
    path = `/jobs/${body.id}`;
    await play.joinAll(body.id);
    return () => play.app.close();
  });
  const get = (person: Parameters<Stage['as']>[0], rest: string) => play.as(person).get(`${path}${rest}`);
  const csv = async (rest: string) => {
    const { text, headers } = await get('rita', rest);
    const [heads = '', ...lines] = text
      .replace(/^\uFEFF/, '')
      .trim()
      .split('\r\n');
    return { heads: heads.split(','), lines, headers };
  };

  it('the takeoff counts the demo by hand: 48 runs, one of them round a corner, one with a tee', async () => {
    const said = readPage((await get('rita', '/takeoff')).text);
    // 46 standard runs of 20/20/20/10, the L-run of two 20/20/10 legs and 5 ft, the run with the tee and its branch.
    expect(said).toMatch(/end cap demo-250A-3PN 48\b/);
    expect(said).toMatch(/end feed demo-250A-3PN 47\b/);
    expect(said).toMatch(/elbow, conductors inside the bend demo-250A-3PN 1\b/);
    expect(said).toMatch(/fire seal 120 min demo-250A-3PN 1\b/);
    expect(said).toContain('Seating tool, added by hand 4 each');
    // 70 ft of run less twenty boxes of a foot on each straight run: counted in metres, shown in the feet of the job.
    expect(said).toMatch(/slot closure demo-250A-3PN 2,397 .*?F1-R01-A 50 ft at/);
  });

  it('a line opens to the places it was counted from', async () => {
    const page = await get('rita', '/takeoff?level=F3');
    const elbow = /<details class="working"><summary>1<span class="unseen"> elbow[\s\S]*?<\/details>/.exec(
      page.text,
    )?.[0];
    expect(readPage(elbow ?? '')).toContain(`F3-R06-A 1 at 60'-0"`);
  });

  it('by level the lines of the levels add up to those of the job, by run to those of the level', async () => {
    const quantity = (text: string, item: RegExp) =>
      [...readPage(text).matchAll(item)].reduce((sum, match) => sum + Number((match[1] ?? '').replace(',', '')), 0);
    const taps = /tap-off L1-N 30 A demo-250A-3PN ([\d,]+)/g;
    const job = quantity((await get('rita', '/takeoff')).text, taps);
    expect(quantity((await get('rita', '/takeoff?by=level')).text, taps)).toBe(job);
    const level = quantity((await get('rita', '/takeoff?level=F2')).text, taps);
    expect(quantity((await get('rita', '/takeoff?by=run&level=F2')).text, taps)).toBe(level);
    expect(job).toBeGreaterThan(level);
  });

  it('twelve rods of 6 ft 9 in need twelve sticks of 10 ft: the cutting plan says so for the whole job', async () => {
    const said = readPage((await get('rita', '/takeoff')).text);
    const [, hangers] = /hanger rod 3\/8 6'-9" demo-250A-3PN (\d+)/.exec(said) ?? [];
    expect(Number(hangers)).toBeGreaterThan(300);
    expect(said).toContain(`3/8: ${hangers} sticks, no fewer will do`);
  });

  it('the CSV of the takeoff names its file, guards formulas and holds each place', async () => {
    const { heads, lines, headers } = await csv('/takeoff.csv?level=F1');
    expect(headers['content-disposition']).toBe('attachment; filename="DEMO-1-takeoff-F1.csv"');
    expect(heads).toEqual(expect.arrayContaining(['level', 'run', 'item', 'quantity', 'places']));
    expect(lines.every((line) => line.startsWith('F1,'))).toBe(true);
    expect(lines.find((line) => line.includes('F1-R01-A,section,stock,'))).toContain(`0""; 20'-0""; 40'-0""`);
  });

  it('hours stand by activity and level, and the lines of the CSV add up to the likely hours', async () => {
    const page = await get('rita', '/hours');
    expect(readPage(page.text)).toContain('Labour book demo-1 (invented) is invented');
    const { body: figures } = await play.as('rita').get(`/api/v1/projects/${path.split('/')[2]}/figures`);
    const { heads, lines } = await csv('/hours.csv');
    const hours = lines.reduce(
      (sum, line) => sum + Number(line.split(',').at(heads.indexOf('hours') - heads.length)),
      0,
    );
    expect(hours).toBeCloseTo(figures.labour.hours.likely, 4);
    expect(readPage(page.text)).toContain(
      `Likely ${hours.toLocaleString('en-US', { minimumFractionDigits: 2, maximumFractionDigits: 2 })} h`,
    );
    expect(readPage(page.text)).toContain('are added to each other: the company’s policy');
  });

  it('each figure of the hours opens to its working, line by line', async () => {
    const { text } = await get('rita', '/hours?activity=joint&level=F2');
    const said = readPage(text);
    expect(text).toMatch(/<a href="\/jobs\/[^"]+\/runs\/[^"]+#hours">F2-R01-A<\/a>/);
    expect(said).toContain('Labour hours: make up joints, Floor 2');
    expect(said).toMatch(/F2-R01-A Floor 2 4 4 0\.6 h 1\.160 13 \d\.\d{3} 1\.060 \d\.\d{2}/); // 15 % congestion and 1 % for the storey, added
    expect(said).toContain('base hours 0.6 h likely, 0.51 to 0.84 h labour book demo-1 (invented)');
  });

  it('of many levels each has a table of its own: no table is wider than anybody reads', async () => {
    const { levels, runs, ...rest } = demoJob();
    const floors = Array.from({ length: 9 }, (_, i) => ({ ...levels[0]!, id: `L${i}`, name: `Storey ${i}`, order: i }));
    const document = {
      ...rest,
      project: { ...rest.project, number: 'NINE' },
      extras: [{ item: 'Site meetings (invented)', quantity: 2, unit: 'each', hours: 3 }],
      levels: floors,
      runs: floors.map(({ id }) => ({ ...plain(), id: `${id}-A`, level: id, pairedRun: undefined, start: undefined })),
    };
    expect(runs.length).toBeGreaterThan(9);
    const { body } = await play.as('ada').post('/api/v1/job-documents').send(document);
    const hours = async (rest: string) => (await play.as('ada').get(`/jobs/${body.id}/hours${rest}`)).text;
    const whole = readPage(await hours(''));
    const sumOf = (name: string) => Number(new RegExp(`${name} ([\\d,.]+)`).exec(whole)?.[1]?.replace(',', ''));
    const places = [...floors.map(({ name }) => sumOf(name)), sumOf('No level')];
    expect(sumOf('No level')).toBeCloseTo(2 * 3 * 1.06, 1);
    expect(places.reduce((sum, each) => sum + each, 0)).toBeCloseTo(sumOf('All levels'), 0);
    expect(sumOf('All levels')).toBe(sumOf('All activities'));
    const third = await hours('?level=L3');
    expect(third).toContain(`/jobs/${body.id}/hours?activity=joint&amp;level=L3`);
    expect(third).toContain('hours of make up joints on Storey 3');
    expect(readPage(third)).toMatch(new RegExp(`All activities ${sumOf('Storey 3')}`));
    expect(readPage(await hours('?level=-'))).toContain('added by hand 6.4');
    expect(readPage(await hours('?level=nowhere'))).toContain('Likely labour hours by level');
  });

  it('rates, the crew and the cost of an hour are the office’s alone, on the page and in the CSV', async () => {
    const office = readPage((await get('olive', '/hours')).text);
    expect(office).toContain('$102.15 = $332.00 / 3.25'); // one half foreman, two journeymen, one apprentice at 0.75
    for (const person of ['frank', 'quinn', 'owen', 'rita'] as const) {
      const said = readPage((await get(person, '/hours')).text);
      expect(said).not.toContain('productive hour');
      expect(said).not.toMatch(/\$\d|Journeyman/);
    }
    for (const file of ['/takeoff.csv', '/hours.csv'])
      expect((await get('frank', file)).text).not.toMatch(/102\.15|9800/);
  });

  it('a run without a sound layout is named where it is not counted', async () => {
    const { body } = await play
      .as('olive')
      .post(`/api/v1/projects/${path.split('/')[2]}/runs`)
      .send({ ...plain(), id: 'F1-R99-A', legs: [{ lengthMm: 18_593, turn: 'none' }] });
    expect(body.layoutOk).toBe(false);
    expect(readPage((await get('rita', '/takeoff')).text)).toContain('no sections can be laid: F1-R99-A');
    expect(readPage((await get('rita', '/hours')).text)).toContain('Without the hours of F1-R99-A');
  });

  it('a job without a labour book has no hours, and says so instead of nought', async () => {
    const { labourBook: _book, ...rest } = demoJob();
    const document = { ...rest, project: { ...rest.project, number: 'NO-BOOK' } };
    const { body } = await play.as('ada').post('/api/v1/job-documents').send(document);
    const said = readPage((await play.as('ada').get(`/jobs/${body.id}/hours`)).text);
    expect(said).toContain('The job has no labour book yet, so no hours are worked');
    expect(readPage((await play.as('ada').get(`/jobs/${body.id}/floors`)).text)).toContain('no labour book');
  });
});

function plain() {
  const run = demoJob().runs[0];
  if (run === undefined) throw new Error('the demo has no runs');
  const { taps: _taps, pairedRun: _pair, end: _end, ...rest } = run;
  return rest;
}
