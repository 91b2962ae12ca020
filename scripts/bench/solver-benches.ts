import type { JobDocument, RunDocument } from '../../src/document/job-document.ts';
import { parseJobDocument } from '../../src/document/parse-job-document.ts';
import { toModel } from '../../src/document/to-model.ts';
import { contextFor, type LayoutContext } from '../../src/domain/layout/context-for.ts';
import { coverRun } from '../../src/domain/layout/cover-run.ts';
import { fewestSupports } from '../../src/domain/layout/fewest-supports.ts';
import { runGeometry } from '../../src/domain/layout/geometry.ts';
import { heldSupports } from '../../src/domain/layout/held-supports.ts';
import { jointBars } from '../../src/domain/layout/joint-bars.ts';
import { layoutRun } from '../../src/domain/layout/layout-run.ts';
import { clipped, loadLine } from '../../src/domain/layout/load-line.ts';
import { placeFittings } from '../../src/domain/layout/place-fittings.ts';
import type { RunLayout } from '../../src/domain/layout/result.ts';
import { sayIn } from '../../src/domain/layout/say.ts';
import { shopFor, shopList } from '../../src/domain/layout/shop-list.ts';
import { centreFeedAt, straightParts } from '../../src/domain/layout/straight-parts.ts';
import { supportBars, supportWindows } from '../../src/domain/layout/support-bars.ts';
import { supportGrid } from '../../src/domain/layout/support-grid.ts';
import { supportLimits } from '../../src/domain/layout/support-limits.ts';
import { supportStretches } from '../../src/domain/layout/support-stretches.ts';
import { tapPlaces } from '../../src/domain/layout/tap-places.ts';
import type { Run } from '../../src/domain/model.ts';
import { sectionProgram } from '../../tests/proof/reference/section-program.ts';
import { programText, type Solve, solver } from '../../tests/proof/reference/solver.ts';
import { supportProgram } from '../../tests/proof/reference/support-program.ts';
import { supportProblem } from '../../tests/proof/reference/supports.ts';
import { type Dice, dice } from '../proof/dice.ts';
import { sectionInstance } from '../proof/section-instance.ts';
import { supportInstance } from '../proof/support-instance.ts';
import type { Bench, Timed } from './bench.ts';
import { quantile } from './compare.ts';

const INSTANCES = 40;
/** Our search is over too soon to be timed: so many of them are timed at once. */
const TIMES = 50;

const reading = `medians of ${INSTANCES} runs, writing the program not counted; above 100 is what is wanted`;

export const solverSections: Bench = {
  name: 'solver-sections',
  measured: 'a reference solver’s time for the sections of a run',
  baseline: 'the program’s own, from its legs to placed sections',
  reading,
  prepare: () =>
    timed(sectionInstance, ({ job, run, model, context }) => {
      const program = sectionProgram(job, run)?.program ?? null;
      return program && { texts: [programText(program)], ours: () => cover(model, context) };
    }),
};

export const solverSupports: Bench = {
  name: 'solver-supports',
  measured: 'a reference solver’s time for the supports of a run',
  baseline: 'the program’s own, simple-span loads included',
  reading,
  prepare: () =>
    timed(
      (chance) => supportInstance(chance, { places: chance.int(8, 60) }),
      ({ job, run, model, context, layout }) => {
        const joints = layout.joints.map(({ at }) => at);
        const program = supportProgram(supportProblem(job, run, layout.length, joints))?.program ?? null;
        return program && { texts: [programText(program)], ours: () => hang(model, context, layout) };
      },
    ),
};

/** Sections and supports one after the other against everything that a layout does: taps, findings, both kinds of loads. */
export const solverLayout: Bench = {
  name: 'solver-layout',
  measured: 'a reference solver’s time for the sections and then the supports of a run',
  baseline: 'the program’s whole layout of it, with its findings and the continuous beam',
  reading,
  prepare: () =>
    timed(
      (chance) => supportInstance(chance, { places: chance.int(8, 60) }),
      ({ job, run, model, context, layout }) => {
        const joints = layout.joints.map(({ at }) => at);
        const sections = sectionProgram(job, run)?.program ?? null;
        const hangers = supportProgram(supportProblem(job, run, layout.length, joints))?.program ?? null;
        if (sections === null || hangers === null) return null;
        return { texts: [programText(sections), programText(hangers)], ours: () => layoutRun(model, context) };
      },
    ),
};

const say = sayIn('metric');

function cover(run: Run, context: LayoutContext) {
  const geometry = runGeometry(run, context.parent);
  const fittings = placeFittings(run, geometry, context).placed;
  const division = straightParts(run, geometry, fittings);
  if (division.kind !== 'parts') return null;
  const { parts } = division;
  const bars = jointBars(run, context.type, tapPlaces(run, geometry, parts.last.hardStop), say);
  return coverRun(shopFor(shopList(context), parts), parts, fittings, bars);
}

/** Without the continuous beam, which no program asks for: it is worked once the places are chosen. */
function hang(run: Run, context: LayoutContext, { pieces, joints, length }: RunLayout) {
  const { type, project } = context;
  const geometry = runGeometry(run, context.parent);
  const fittings = placeFittings(run, geometry, context).placed;
  const taps = tapPlaces(run, geometry, length);
  const line = loadLine({ run, type, pieces, length, centreFeedAt: centreFeedAt(run, geometry), taps });
  const setting = { run, type, pieces, fittings, joints };
  const { limits } = supportLimits(run, type, project, say);
  if (limits === null) return null;
  return supportStretches(geometry, fittings, length).map((stretch) => {
    const windows = supportWindows(setting, limits, stretch);
    const grid = supportGrid(setting, limits, stretch, supportBars(setting), windows);
    const choice = fewestSupports(grid);
    const carried = clipped(line, stretch.loadFrom, stretch.loadTo);
    return choice.ok ? heldSupports(grid, carried, choice.places, run.supportCapacityKg) : null;
  });
}

interface Laid {
  readonly job: JobDocument;
  readonly run: RunDocument;
  readonly model: Run;
  readonly context: LayoutContext;
  readonly layout: RunLayout;
}

interface Instance {
  /** The programs that the solver gets one after the other. */
  readonly texts: readonly string[];
  readonly ours: () => unknown;
}

type Pose = (laid: Laid) => Instance | null;

/** One round goes through all instances, each by the solver and by the program at the same moment. */
async function timed(draw: (dice: Dice) => JobDocument, pose: Pose): Promise<Timed> {
  const solve = await solver();
  const instances = instancesOf(draw, pose);
  return {
    round: async () => {
      const times = instances.map(({ texts, ours }) => timesOf(solve, texts, ours));
      return {
        measured: quantile(
          times.map(({ measured }) => measured),
          0.5,
        ),
        baseline: quantile(
          times.map(({ baseline }) => baseline),
          0.5,
        ),
      };
    },
  };
}

/** Processor time, not the clock's: the longer of the two would else be the one that a busy machine interrupts. */
function timesOf(solve: Solve, texts: readonly string[], ours: () => unknown) {
  const began = process.cpuUsage();
  for (const text of texts) solve(text);
  const solved = process.cpuUsage();
  for (let i = 0; i < TIMES; i += 1) ours();
  return { measured: millis(began, solved), baseline: millis(solved, process.cpuUsage()) / TIMES };
}

function millis(from: NodeJS.CpuUsage, to: NodeJS.CpuUsage): number {
  return (to.user - from.user + to.system - from.system) / 1000;
}

/** Runs that can be laid out: the first run of each drawn job, so that neither side is timed at giving up. */
function instancesOf(draw: (dice: Dice) => JobDocument, pose: Pose): readonly Instance[] {
  const instances: Instance[] = [];
  for (let i = 0; instances.length < INSTANCES; i += 1) {
    const document = draw(dice(1, i));
    if (!parseJobDocument(document).ok) continue;
    const whole = toModel(document);
    const model = whole.runs[0]!;
    const context = contextFor(whole, model);
    const layout = layoutRun(model, context);
    const instance = layout.ok ? pose({ job: document, run: document.runs[0]!, model, context, layout }) : null;
    if (instance !== null) instances.push(instance);
  }
  return instances;
}
