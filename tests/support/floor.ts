// A small job of the demo's type, released to the floor: two standard runs, one with a tee and its branch, one round a corner.
// Records are sent through the API by the named cast; times are of the invented working day.
import { randomUUID } from 'node:crypto';
import { demoJob } from '../../src/document/demo/demo-job.ts';
import type { JobDocument } from '../../src/document/job-document.ts';
import type { RecordInput } from '../../src/document/record-schema.ts';
import { pairsOf } from '../../src/domain/quality/insulation/pairs.ts';
import type { Database } from '../../src/store/database.ts';
import { type Person, type Stage, stage } from './cast.ts';

export const RUN = 'F1-R01-A';
export const TEE = 'F1-R06-A';
export const BRANCH = 'F1-R06-A-BR';
export const CORNER = 'F3-R06-A';
/** Not released. */
export const DRAFT = 'F1-R01-B';
/** Standard runs whose joints the tests take one after the other. */
const SPARE = ['F2-R01-A', 'F2-R02-A', 'F2-R03-A', 'F2-R04-A', 'F2-R05-A'];
const PAIRS = ['F3-R06-B', ...SPARE.map((key) => key.replace(/A$/, 'B'))];
const KEYS = [RUN, DRAFT, TEE, BRANCH, CORNER, ...SPARE, ...PAIRS];

export interface Thing {
  readonly id: string;
  readonly mark: string;
  readonly state: string;
  readonly version: number;
  readonly atMm: number;
  readonly fromMm: number;
  readonly toMm: number;
  readonly kind: string;
}

type Body = RecordInput['body'];
export type More = Partial<Omit<RecordInput, 'body' | 'subject' | 'subjectId'>>;
type Noun = 'sections' | 'joints' | 'supports' | 'taps';

export function floorJob(): JobDocument {
  const whole = demoJob();
  return { ...whole, runs: whole.runs.filter((run) => KEYS.includes(run.id)) };
}

export type Floor = Awaited<ReturnType<typeof releasedFloor>>;

export async function releasedFloor(database: Database, change: (job: JobDocument) => JobDocument = (job) => job) {
  const play: Stage = await stage(database);
  const made = await play.as('ada').post('/api/v1/job-documents').send(change(floorJob()));
  if (made.status !== 201) throw new Error(JSON.stringify(made.body).slice(0, 2000));
  const projectId: string = made.body.id;
  const job = `/api/v1/projects/${projectId}`;
  await play.joinAll(projectId);
  const runs = KEYS.filter((key) => key !== DRAFT && !PAIRS.includes(key));
  const released = await play.as('olive').post(`${job}/releases`).send({ runs });
  if (released.status !== 201) throw new Error(JSON.stringify(released.body).slice(0, 2000));

  const things = async (noun: Noun, run: string): Promise<Thing[]> =>
    (await play.as('rita').get(`${job}/${noun}?run=${run}&limit=500`)).body.items;
  const runId = async (key: string): Promise<string> => {
    const { items } = (await play.as('rita').get(`${job}/runs?limit=500`)).body;
    return items.find((row: { key: string }) => row.key === key).id;
  };
  const send = (person: Person, subject: RecordInput['subject'], subjectId: string, body: Body, more: More = {}) =>
    play
      .as(person)
      .post(`${job}/inspections`)
      .send({ submissionId: randomUUID(), at: play.context.clock().toISOString(), subject, subjectId, body, ...more });
  /** Sends a record that must be taken. */
  const take = async (...asked: Parameters<typeof send>) => {
    const answer = await send(...asked);
    if (answer.status !== 201) throw new Error(`${asked[3].kind} was refused: ${JSON.stringify(answer.body)}`);
    return answer.body;
  };
  const card = async (noun: Noun, id: string) => (await play.as('rita').get(`${job}/${noun}/${id}`)).body;
  const checks = async (key: string) => (await play.as('rita').get(`${job}/runs/${await runId(key)}/checks`)).body;

  /** Hangs every piece of a run, conductors on its own side. */
  const hangAll = async (run: string, side: 'left' | 'right' = 'left') => {
    for (const piece of await things('sections', run))
      if (piece.state !== 'hung') await take('ines', 'piece', piece.id, hung(side));
  };
  /** Makes a joint up to its last step, by Ines, the check by Ivan. */
  const makeJoint = async (id: string, steps = STEPS.length) => {
    for (const step of STEPS.slice(0, steps).keys())
      await take(step === CHECK ? 'ivan' : 'ines', 'joint', id, stepBody(step));
  };
  const spare: Thing[] = [];
  const runsLeft = [...SPARE];
  /** A joint between two hung pieces that nobody has touched. */
  const freshJoint = async (): Promise<Thing> => {
    const found = spare.shift();
    if (found !== undefined) return found;
    const run = runsLeft.shift();
    if (run === undefined) throw new Error('no run is left whose joints are fresh');
    await hangAll(run);
    spare.push(...(await things('joints', run)));
    return freshJoint();
  };
  const acceptJoint = (id: string) => take('quinn', 'joint', id, { kind: 'joint-accepted' });
  return {
    play,
    projectId,
    job,
    things,
    runId,
    send,
    take,
    card,
    checks,
    hangAll,
    makeJoint,
    freshJoint,
    acceptJoint,
    close: () => play.app.close(),
  };
}

const STEPS: readonly string[] = demoJob().buswayTypes[0]?.joint?.steps ?? [];
/** Steps of the demo's sheet, from 0. */
export const [UPPER_TORQUE, HOLD, TOOL_OUT, LOWER_CLAMP, LOWER_TORQUE, CHECK] = [4, 7, 8, 9, 10, 11] as const;
export const STEP_COUNT = STEPS.length;

export const POLES = (['L1', 'L2', 'L3', 'N'] as const).map((pole) => ({ pole, near: true, far: true }));
/** As the invented sheet states it. */
export const TORQUE = { value: 24, unit: 'Nm', toolId: 'T-03', calibrationDue: '2026-11-30' } as const;

export function stepBody(step: number, more: Partial<Extract<Body, { kind: 'joint-step' }>> = {}): Body {
  const line = STEPS[step] ?? 'no such step';
  return {
    kind: 'joint-step',
    step,
    text: line.replace(/^(HOLD|TORQUE|CHECK): /, ''),
    ...(line.startsWith('HOLD') ? { poles: POLES } : {}),
    ...(line.startsWith('TORQUE') ? { torque: TORQUE } : {}),
    ...more,
  };
}

export function hung(conductorSide: 'left' | 'right', more: { endsConfirmedBy?: string } = {}): Body {
  return { kind: 'piece-hung', conductorSide, ...more };
}

export const SET = { kind: 'support-set', rodPlumb: true, loadNut: true, lockNut: true } as const;

type TestBody = Extract<Body, { kind: 'insulation-test' }>;

/** A sheet on which every one of the ten pairs of 3P+N reads more than 5000 MΩ at 22 °C. */
export function testBody(more: Partial<TestBody> = {}): TestBody {
  return {
    kind: 'insulation-test',
    rule: 'acceptance-1000ft',
    testVoltageV: 1000,
    durationS: 60,
    instrument: { id: 'M-02', calibrationDue: '2026-11-30', topRange: { value: 5000, unit: 'MΩ' } },
    surfaceTempC: 22,
    ambientTempC: 21,
    humidityPercent: 45,
    isolations: ['feeder lifted', 'neutral bond open'],
    readings: pairsOf({ poles: 3, neutral: 'full' }).map((pair) => ({ pair, reading: BEYOND })),
    ...more,
  };
}

export const BEYOND = { kind: 'value', comparator: '>', value: 5000, unit: 'MΩ', written: '5000' } as const;

export function withReading(pair: string, reading: TestBody['readings'][number]['reading']): TestBody['readings'] {
  return testBody().readings.map((row) => (row.pair === pair ? { pair, reading } : row));
}

export function tapSetBody(phasesFound: Extract<Body, { kind: 'tap-set' }>['phasesFound'], provedAt: string) {
  return {
    kind: 'tap-set' as const,
    isolation: { runIsolated: true, absenceOfVoltageProved: true, provedBy: 'Quinn Vale', provedAt },
    device: { off: true, locked: true },
    steps: ['unit seated on the slot', 'latch closed'],
    phasesFound,
  };
}
