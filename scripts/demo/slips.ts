import { insulationTest, jointStep } from './bodies.ts';
import type { Crew } from './crew.ts';
import type { FloorRun } from './floor.ts';

/** Slips of the trade on a run that is delivered and nothing more, each of which must be refused, with what was told. */
export async function tryEarlySlips(crew: Crew, run: FloorRun): Promise<string[]> {
  const { people, refused, twice } = crew;
  const { conductorSide } = run.document;
  const [section, spare] = run.sections;
  const [joint] = run.joints;
  const wrongSide = conductorSide === 'left' ? 'right' : 'left';
  await twice(people.ines, 'piece', section!.id, { kind: 'piece-hung', conductorSide });
  return [
    await refused(people.ines, 'piece', spare!.id, { kind: 'piece-hung', conductorSide: wrongSide }, 409),
    await refused(people.ines, 'joint', run.joints[1]!.id, jointStep(run.steps, 0), 409),
    await refused(people.ines, 'joint', joint!.id, jointStep(run.steps, 7), 409),
    await refused(people.ines, 'run', run.id, insulationTest(run), 403),
  ];
}

/** On a run whose joints are closed: the one who made a joint up does not accept it. */
export async function tryOwnAcceptance({ people, refused, record }: Crew, run: FloorRun): Promise<string> {
  const [joint] = run.joints;
  await record(people.frank, 'joint', joint!.id, jointStep(run.steps, 0));
  for (const [step, text] of run.steps.entries()) {
    if (step > 0)
      await record(
        text.startsWith('CHECK:') ? people.ivan : people.ines,
        'joint',
        joint!.id,
        jointStep(run.steps, step),
      );
  }
  return refused(people.frank, 'joint', joint!.id, { kind: 'joint-accepted', differencesRead: true }, 409);
}
