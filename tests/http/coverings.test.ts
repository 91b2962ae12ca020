import { beforeAll, describe, expect, it } from 'vitest';
import { forEachDatabase } from '../support/databases.ts';
import { CORNER, type Floor, RUN, releasedFloor } from '../support/floor.ts';
import { readPage } from '../support/page.ts';

interface Answer {
  compared: boolean;
  coverings: { sections: { fromMm: number; toMm: number }[]; cost?: { total: number }; why: string | null }[];
}

forEachDatabase((open) => {
  let floor: Floor;
  beforeAll(async () => {
    floor = await releasedFloor(await open());
    return () => floor.close();
  });
  const ranked = async (person: Parameters<Floor['play']['as']>[0], key: string) => {
    const id = await floor.runId(key);
    return floor.play.as(person).get(`/api/v1/projects/${floor.projectId}/runs/${id}/coverings`);
  };
  const page = async (person: Parameters<Floor['play']['as']>[0], key: string) =>
    floor.play.as(person).get(`/jobs/${floor.projectId}/runs/${await floor.runId(key)}`);

  describe('the coverings of a run', () => {
    it('are three, the chosen one first, dearer from one to the next, each lost for a reason with its amount', async () => {
      const { status, body } = await ranked('olive', CORNER);
      expect(status).toBe(200);
      const { coverings, compared }: Answer = body;
      expect(compared).toBe(true);
      const run = await floor.play
        .as('olive')
        .get(`/api/v1/projects/${floor.projectId}/runs/${await floor.runId(CORNER)}`);
      expect(coverings[0]?.sections).toEqual(run.body.layout.sections);
      expect(coverings).toHaveLength(3);
      expect(new Set(coverings.map(({ sections }) => JSON.stringify(sections))).size).toBe(3);
      const totals = coverings.map(({ cost }) => cost?.total ?? Number.NaN);
      expect(totals).toEqual([...totals].sort((a, b) => a - b));
      expect(coverings.map(({ why }) => why === null)).toEqual([true, false, false]);
      expect(JSON.stringify(body)).toMatch(/\$\d+\.\d\d more|Same cost/);
    });

    it('tell nobody but the office an amount', async () => {
      for (const person of ['frank', 'ines', 'quinn', 'owen', 'rita'] as const) {
        const { body } = await ranked(person, CORNER);
        expect((body as Answer).coverings.map(({ cost }) => cost)).toEqual([undefined, undefined, undefined]);
        expect(JSON.stringify(body)).not.toMatch(/\$|"(total|jointKit|more)"/);
        expect(JSON.stringify((body as Answer).coverings[0]?.sections)).toContain('fromMm');
      }
    });

    it('stand on the page of the run: for the office with amounts, for the foreman without', async () => {
      const office = readPage((await page('olive', RUN)).text);
      expect(office).toContain('Coverings compared');
      expect(office).toMatch(/Second .* (more|Same cost)/);
      const foreman = readPage((await page('frank', RUN)).text);
      expect(foreman).toContain('Coverings compared');
      expect(foreman).toMatch(/Chosen .* It wins over every other/);
      expect(foreman).not.toContain('$');
    });

    it('of a run that is not there are not found', async () => {
      const { status } = await floor.play.as('olive').get(`/api/v1/projects/${floor.projectId}/runs/none/coverings`);
      expect(status).toBe(404);
    });
  });
});
