import { beforeAll, expect, it } from 'vitest';
import { pdfLettering } from '../paper/support/pdf-strokes.ts';
import { forEachDatabase } from '../support/databases.ts';
import { CORNER, DRAFT, type Floor, RUN, releasedFloor } from '../support/floor.ts';
import { readPage } from '../support/page.ts';

forEachDatabase((open) => {
  let floor: Floor;
  let levelId: string;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    const floors = (await floor.play.as('rita').get(`/jobs/${floor.projectId}/floors?floor=F1`)).text;
    levelId = /floors\/([0-9a-f-]{36})\/plan"/.exec(floors)?.[1] ?? '';
    return () => floor.close();
  });
  type Name = Parameters<Floor['play']['as']>[0];
  const get = (person: Name, path: string) => floor.play.as(person).get(`/jobs/${floor.projectId}${path}`);
  const file = async (path: string) => (await get('frank', path).buffer(true)).body as Buffer;
  const strip = async (key: string) => `/runs/${await floor.runId(key)}/strip`;

  it('the plan of a level shows its runs as links, its parts by plain links, and where to print it', async () => {
    const page = await get('frank', `/floors/${levelId}/plan`);
    expect(page.status).toBe(200);
    const drawing = /<svg[^>]*class="plan"[\s\S]*?<\/svg>/.exec(page.text)?.[0] ?? '';
    expect(drawing).toContain(`/runs/${await floor.runId(RUN)}"`);
    expect(drawing).toContain('>T20</text>');
    expect(drawing).toContain('>north');
    expect(page.text).toContain('/plan?show=north-west"');
    expect(page.text).toContain('/plan.pdf?paper=letter"');
    expect(readPage(page.text)).toContain('whole level north-west north-east south-west south-east');
  });

  it('round one run the plan is larger, and a part that the level lacks shows the whole', async () => {
    const scaleOf = (html: string) =>
      Number(/<rect x="26" y="[\d.]+" width="([\d.]+)" height="6" fill="none"/.exec(html)?.[1]);
    const whole = (await get('frank', `/floors/${levelId}/plan`)).text;
    const one = await get('frank', `/floors/${levelId}/plan?show=${RUN}`);
    expect(one.text).toContain(`Plan of Floor 1: ${RUN}, scrolls sideways`);
    expect(one.text).not.toEqual(whole);
    expect(scaleOf(one.text)).toBeGreaterThan(0);
    expect(readPage((await get('frank', `/floors/${levelId}/plan?show=attic`)).text)).toContain('Whole level');
  });

  it('a released strip comes as PDF with its revision, a draft says that nothing is built from it', async () => {
    const answer = await get('frank', `${await strip(RUN)}.pdf?of=floor`).buffer(true);
    expect(answer.headers['content-type']).toBe('application/pdf');
    expect(answer.headers['content-disposition']).toContain('Strip-of-run-F1-R01-A-1-96-letter.pdf');
    const said = pdfLettering(answer.body as Buffer).join('\n');
    expect(said).toContain('revision 1');
    expect(said).not.toContain('not for construction');
    expect(said).toContain('Invented data of a demonstration');
    const draft = pdfLettering(await file(`${await strip(DRAFT)}.pdf`)).join('\n');
    expect(draft).toContain('not for construction until released');
  });

  it('the same sheets come as SVG in millimetres, on the paper and at the scale that was chosen', async () => {
    const answer = await get('frank', `${await strip(CORNER)}.svg?paper=a4&scale=48`).buffer(true);
    expect(answer.headers['content-type']).toContain('image/svg+xml');
    const svg = (answer.body as Buffer).toString('utf8');
    expect(svg).toMatch(/width="297mm"/);
    expect(svg).toContain("1/4&quot; = 1'-0&quot;");
    const plan = await get('frank', `/floors/${levelId}/plan.svg`).buffer(true);
    expect((plan.body as Buffer).toString('utf8')).toContain('Plan of Floor 1');
  });

  it('the same drawing comes as DXF, which says itself that a draft is not to be built from', async () => {
    const answer = await get('frank', `${await strip(DRAFT)}.dxf`).buffer(true);
    expect(answer.headers['content-type']).toBe('image/vnd.dxf');
    const dxf = (answer.body as Buffer).toString('utf8');
    expect(dxf).toContain('not for construction until released');
    expect(dxf).toContain('Invented data of a demonstration');
    const plan = ((await get('frank', `/floors/${levelId}/plan.dxf`).buffer(true)).body as Buffer).toString('utf8');
    expect(plan).toContain(RUN);
    expect(plan).toContain('Tap-off marks');
  });

  it('no drawing holds money', async () => {
    for (const path of [`${await strip(RUN)}.svg`, `/floors/${levelId}/plan.svg`]) {
      const svg = ((await get('olive', path).buffer(true)).body as Buffer).toString('utf8');
      expect(svg).not.toMatch(/\$|USD|price|cost/i);
    }
  });

  it.each([
    ['scale=97', '1:97 is not among the scales of a drawing in feet and inches.'],
    ['paper=napkin', 'There is no paper "napkin" here.'],
    ['scale=1200', 'have no room on the sheet'],
  ])('what cannot be printed (%s) is refused with what to choose', async (query, message) => {
    const answer = await get('frank', `${await strip(RUN)}.pdf?${query}`);
    expect(answer.status).toBe(422);
    expect(readPage(answer.text)).toContain(message);
  });

  it('a drawing of a job that a person does not reach is not found', async () => {
    const path = `/jobs/${floor.projectId}/floors/${levelId}/plan.pdf`;
    expect((await floor.play.as('stan').get(path)).status).toBe(404);
  });
});
