import { z } from 'zod';
import { firstAccountSecret } from '../../src/actions/accounts.ts';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import { throwawayDatabases } from '../proof/databases.ts';
import { openService } from '../proof/service.ts';
import { readinessTable, readReadiness, takeCloseout } from './closeout.ts';
import { type Crew, makeCrew } from './crew.ts';
import { figuresSchema, hoursTables, takeoffTable } from './estimate.ts';
import { type FloorRun, listRuns, readFloorRun } from './floor.ts';
import { type Extent, install, testInsulation } from './install.ts';
import { makePeople, type People } from './people.ts';
import { tryEarlySlips, tryOwnAcceptance } from './slips.ts';

export interface DemoSetting {
  readonly folder: string;
  readonly tell: (text: string) => void;
  readonly progress: (text: string) => void;
  readonly keep: (name: string, content: string) => void;
  /** How far the crew gets with a run; null is not begun. */
  readonly extentOf: (run: string) => Extent | null;
}

/** The whole job, start to closeout. Throws on the first thing that is not as it should be. */
export async function runDemo(setting: DemoSetting): Promise<void> {
  const databases = throwawayDatabases();
  const service = await openService(await databases.migratedUrl('sqlite'));
  try {
    const secret = await firstAccountSecret(service.context);
    if (secret === null) throw new Error('The new database has an account already.');
    setting.progress(`The service is at ${service.url}, on a database that is thrown away.`);
    const people = await makePeople(service.url, secret);
    setting.progress('6 people have accounts and tokens.');
    const project = await bringIn(people);
    await estimate(setting, people, project);
    await release(setting, people, project);
    const crew = makeCrew(people.crew, project);
    await work(setting, crew);
    await handOver(setting, people, project);
  } finally {
    await service.close();
    await databases.close();
  }
}

async function bringIn({ ada, joinAll }: People): Promise<string> {
  const made = await ada.send('POST', '/job-documents', demoJob(), 201);
  const { id } = z.object({ id: z.string() }).parse(made.body);
  await joinAll(id);
  return `/projects/${id}`;
}

async function estimate({ tell, progress, keep }: DemoSetting, { crew }: People, project: string): Promise<void> {
  progress('Working out takeoff and hours.');
  const answer = await crew.olive.get(`${project}/figures`);
  const figures = figuresSchema.parse(answer.body);
  const uncovered = figures.runs.filter(({ layout }) => !layout.ok).map(({ id }) => id);
  if (uncovered.length > 0) throw new Error(`These runs cannot be laid out: ${uncovered.join(', ')}.`);
  const stops = figures.checks.filter(({ severity }) => severity === 'stop').length;
  if (stops > 0) throw new Error(`The demo job has ${stops} stops.`);
  keep('figures.json', `${JSON.stringify(answer.body, null, 2)}\n`);
  tell(`Takeoff of the demo job (${figures.runs.length} runs; everything in it is invented)\n`);
  tell(`${takeoffTable(figures)}\n\nHours\n\n${hoursTables(figures)}\n`);
}

const releasedSchema = z.object({ released: z.array(z.unknown()), waiting: z.array(z.unknown()) });

async function release({ tell }: DemoSetting, { crew }: People, project: string): Promise<void> {
  const answer = await crew.olive.send('POST', `${project}/releases`, {}, 201);
  const { released, waiting } = releasedSchema.parse(answer.body);
  const runs = demoJob().runs.length;
  if (released.length !== runs || waiting.length > 0) {
    throw new Error(`${released.length} of ${runs} runs were released, ${waiting.length} wait.`);
  }
  tell(`Released to the floor: ${released.length} runs.\n`);
}

/** Where the slips are tried: on a run that is only delivered, and on one that is only hung. */
const SLIPS_AT = { delivered: 'F3-R01-A', hung: 'F2-R03-A' } as const;

async function work({ tell, progress, extentOf }: DemoSetting, crew: Crew): Promise<void> {
  const { people, project } = crew;
  const complete: FloorRun[] = [];
  const told: string[] = [];
  for (const row of await listRuns(people.frank, project)) {
    const extent = extentOf(row.key);
    if (extent === null) continue;
    const run = await readFloorRun(people.frank, project, row);
    await install(crew, run, extent);
    if (extent === 'complete') complete.push(run);
    if (row.key === SLIPS_AT.delivered) told.push(...(await tryEarlySlips(crew, run)));
    if (row.key === SLIPS_AT.hung) told.push(await tryOwnAcceptance(crew, run));
    progress(`${row.key}: ${extent}; ${crew.records()} records so far.`);
  }
  for (const run of complete) await testInsulation(crew, run);
  progress(`${complete.length} insulation tests; ${crew.records()} records.`);
  tell(`Recorded by the crew: ${crew.records()} records.\n\nRefused, as they should be:`);
  tell(`${told.map((words) => `- ${words}`).join('\n')}\n`);
  await expectRecords(crew);
}

const totalSchema = z.object({ total: z.number() });

async function expectRecords({ people, project, records }: Crew): Promise<void> {
  const { total } = totalSchema.parse((await people.quinn.get(`${project}/inspections?limit=1`)).body);
  if (total !== records()) throw new Error(`${records()} records were taken, and the book holds ${total}.`);
}

const trailSchema = z.object({ total: z.number(), firstBreak: z.number().nullable() });

async function handOver(
  { folder, tell, progress, extentOf }: DemoSetting,
  { crew }: People,
  project: string,
): Promise<void> {
  progress('Making the closeout package.');
  const { ready, gaps: all } = await readReadiness(crew.quinn, project);
  const gaps = all.filter(({ run }) => run !== null && extentOf(run) === 'complete');
  if (gaps.length > 0) {
    throw new Error(`Work that is complete has gaps: ${gaps.map(({ mark, words }) => `${mark} ${words}`).join('; ')}`);
  }
  tell(`Closeout\n\n${readinessTable(ready)}\n\n${ready.gaps.total} gaps, none of them on a run that is complete.`);
  const trail = trailSchema.parse((await crew.quinn.get(`${project}/audit?limit=1`)).body);
  if (trail.firstBreak !== null) throw new Error(`The audit trail breaks at ${trail.firstBreak}.`);
  const { file, verified } = await takeCloseout(crew.frank, project, folder);
  if (!verified.ok) throw new Error(`The package does not verify: ${verified.faults.join('; ')}`);
  if (verified.audit.entries !== trail.total) {
    throw new Error(`The package holds ${verified.audit.entries} audit entries of ${trail.total}.`);
  }
  tell(`The package verifies: ${verified.files} files, ${verified.audit.entries} audit entries in one chain.\n`);
  tell(`It is here: ${file}`);
}
