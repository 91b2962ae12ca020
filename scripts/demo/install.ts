import type { RecordInput } from '../../src/document/record-schema.ts';
import { insulationTest, isCheck, jointStep, tapSet } from './bodies.ts';
import type { Crew } from './crew.ts';
import type { FloorRun, FloorThing } from './floor.ts';

/** How far the crew gets with a run. */
export type Extent = 'delivered' | 'hangers' | 'hung' | 'seated' | 'complete';

/** Installs a run as far as asked: the installers' work, another person's checks and acceptances, the tests. */
export async function install(crew: Crew, run: FloorRun, extent: Extent): Promise<void> {
  await deliver(crew, run);
  if (extent === 'delivered') return;
  await setHangers(crew, run);
  if (extent === 'hangers') return;
  await hang(crew, run);
  if (extent === 'hung') return;
  const upTo = extent === 'seated' ? 1 + run.steps.findIndex((text) => text.startsWith('HOLD:')) : run.steps.length;
  for (const joint of run.joints) await makeUp(crew, run, joint, upTo);
  if (extent === 'seated') return;
  await accept(crew, run);
  await setTaps(crew, run);
  await close(crew, run);
}

async function deliver({ people, record }: Crew, { sections }: FloorRun): Promise<void> {
  for (const section of sections) {
    await record(people.ines, 'piece', section.id, { kind: 'piece-on-site', lot: 'CRATE-1' });
  }
}

async function setHangers({ people, record }: Crew, { supports }: FloorRun): Promise<void> {
  for (const support of supports) {
    const body = { kind: 'support-set', rodPlumb: true, loadNut: true, lockNut: true } as const;
    expectState(support, await record(people.ivan, 'support', support.id, body), 'set');
  }
}

async function hang({ people, record }: Crew, { sections, document }: FloorRun): Promise<void> {
  const { conductorSide } = document;
  for (const section of sections) {
    const body = { kind: 'piece-hung', conductorSide, endsConfirmedBy: 'Frank Dune' } as const;
    expectState(section, await record(people.ines, 'piece', section.id, body), 'hung');
  }
}

/** Ines makes the joint up; a step that asks for another person's check is Ivan's. */
async function makeUp({ people, record }: Crew, { steps }: FloorRun, joint: FloorThing, upTo: number): Promise<void> {
  for (const [step, text] of steps.slice(0, upTo).entries()) {
    const who = isCheck(text) ? people.ivan : people.ines;
    await record(who, 'joint', joint.id, jointStep(steps, step));
  }
}

/** The inspector accepts joints, who did none of their steps; the foreman the hangers. */
async function accept({ people, record }: Crew, { joints, supports }: FloorRun): Promise<void> {
  for (const joint of joints) {
    const body = { kind: 'joint-accepted', differencesRead: true } as const;
    expectState(joint, await record(people.quinn, 'joint', joint.id, body), 'accepted');
  }
  for (const support of supports) {
    expectState(support, await record(people.frank, 'support', support.id, { kind: 'support-accepted' }), 'accepted');
  }
}

async function setTaps({ people, record }: Crew, run: FloorRun): Promise<void> {
  const drops = new Set(run.document.taps?.filter(({ dropMm }) => dropMm !== undefined).map(({ id }) => id));
  for (const tap of run.taps) {
    await record(people.ivan, 'tap', tap.id, { kind: 'tap-on-site', lot: 'BOX-1' });
    await record(people.ivan, 'tap', tap.id, tapSet(run, tap.key, people.ivan.name, new Date().toISOString()));
    if (drops.has(tap.key)) await record(people.ivan, 'tap', tap.id, { kind: 'drop-supported', distanceMm: 1_200 });
    expectState(tap, await record(people.quinn, 'tap', tap.id, { kind: 'tap-checked' }), 'checked');
  }
}

/** Ends, slot and seals; and what only a record can say is done. */
async function close({ people, record }: Crew, run: FloorRun): Promise<void> {
  await record(people.ines, 'run', run.id, { kind: 'end-closed', end: 'far', capFitted: true, screwSet: true });
  await record(people.ines, 'run', run.id, { kind: 'slot-closed' });
  const sealed = run.document.crossings?.some(({ kind }) => kind === 'fire-wall') ?? false;
  const reported: ActivityBody['activity'][] = ['lay-out', 'label', ...(sealed ? (['fire-seal'] as const) : [])];
  for (const activity of reported) await record(people.frank, 'run', run.id, { kind: 'activity-done', activity });
}

type ActivityBody = Extract<RecordInput['body'], { kind: 'activity-done' }>;

/** Last of all: work anywhere in what is electrically connected would make a test stale. */
export async function testInsulation({ people, record }: Crew, run: FloorRun): Promise<void> {
  await record(people.quinn, 'run', run.id, insulationTest(run));
}

function expectState({ mark }: FloorThing, found: string | null, expected: string): void {
  if (found !== expected) throw new Error(`${mark} should be ${expected} and is ${found ?? 'without a state'}.`);
}
