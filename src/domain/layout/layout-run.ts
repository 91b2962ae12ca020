import { type Finding, orderFindings } from '../finding.ts';
import type { Run } from '../model.ts';
import type { Length } from '../units/length.ts';
import { aboveStructure } from './above-structure.ts';
import { checkFacing } from './check-facing.ts';
import { checkTaps } from './check-taps.ts';
import type { LayoutContext } from './context-for.ts';
import { coverRun } from './cover-run.ts';
import { coveringCost } from './covering-cost.ts';
import { facingOf } from './facing.ts';
import { fieldHoldFindings } from './field-hold-findings.ts';
import { fixedJointFindings } from './fixed-joint-findings.ts';
import { fixedJoints } from './fixed-joints.ts';
import { type RunGeometry, runGeometry } from './geometry.ts';
import { jointBars, type TapPlace } from './joint-bars.ts';
import { jointsOf } from './joints-of.ts';
import { layOutSupports } from './lay-out-supports.ts';
import { loadLine } from './load-line.ts';
import { misdrawn } from './misdrawn.ts';
import { noCoverFindings } from './no-cover-findings.ts';
import { oddEntries } from './odd-entries.ts';
import { pathPoints } from './path-points.ts';
import { type Fittings, placeFittings } from './place-fittings.ts';
import type { PlacedPiece, RunLayout } from './result.ts';
import { type Say, sayIn } from './say.ts';
import { shopFor, shopList } from './shop-list.ts';
import { type StraightParts, straightParts } from './straight-parts.ts';
import { tapPlaces } from './tap-places.ts';
import { unknownLimits } from './unknown-limits.ts';
import { unpricedNote } from './unpriced-note.ts';

/**
 * The exact layout of one run: geometry, fittings by hand, the covering of every straight part that wins, joints, taps checked
 * against it, supports with both loads. Lengths in 1/80 mm. Throws only on our own faults; whatever a person can mend is a
 * finding. What the floor substituted is kept while the route lets it. Rules: job document, "Meaning".
 *
 * @example layoutRun(run, contextFor(job, run)).joints.length
 */
export function layoutRun(run: Run, context: LayoutContext): RunLayout {
  const say = sayIn(context.project.units);
  const geometry = runGeometry(run, context.parent);
  const fittings = placeFittings(run, geometry, context);
  const drawn: Drawn = { run, context, say, geometry, fittings };
  const division = straightParts(run, geometry, fittings.placed);
  const faults = misdrawn(run, context, fittings, division, say);
  if (division.kind !== 'parts' || faults.some((finding) => finding.severity === 'stop')) return barred(drawn, faults);
  const { parts } = division;
  const bars = jointBars(run, context.type, tapPlaces(run, geometry, parts.last.hardStop), say);
  const stuck = fixedJointFindings(
    run,
    context.type,
    fixedJoints(run.feed, context.type, fittings.placed, parts),
    bars,
    say,
  );
  const list = shopList(context);
  const holding = run.fieldHold && { hold: run.fieldHold, type: context.type, say };
  const covering = coverRun(shopFor(list, parts), parts, fittings.placed, bars, holding);
  if (!covering.ok) {
    return barred(drawn, [
      ...faults,
      ...stuck,
      ...noCoverFindings(run, context.type, list, covering.uncovered, bars, say),
    ]);
  }
  if (stuck.length > 0) return barred(drawn, [...faults, ...stuck]);
  const kept = covering.lost.length === 0 ? run.fieldHold : null;
  const held = fieldHoldFindings(run, covering.lost, say);
  return laidOut(drawn, parts, covering.pieces, [...faults, ...held], kept?.supports ?? []);
}

interface Drawn {
  readonly run: Run;
  readonly context: LayoutContext;
  readonly say: Say;
  readonly geometry: RunGeometry;
  readonly fittings: Fittings;
}

function laidOut(
  drawn: Drawn,
  parts: StraightParts,
  pieces: readonly PlacedPiece[],
  faults: readonly Finding[],
  standing: readonly Length[],
): RunLayout {
  const { run, context, say, geometry, fittings } = drawn;
  const { type, project } = context;
  const length = pieces.at(-1)?.to ?? 0;
  const joints = jointsOf(pieces, run.feed, type, parts.feedAt);
  const places = tapPlaces(run, geometry, length);
  const checked = checkTaps({ run, type, length, pieces, joints }, places, say);
  const line = loadLine({ run, type, pieces, length, centreFeedAt: parts.feedAt, taps: places });
  const setting = { run, type, pieces, fittings: fittings.placed, joints };
  const hung = layOutSupports(setting, geometry, project, line, say, standing);
  const cost = coveringCost(pieces, joints.length, type.prices, context.jointLabour);
  const unpriced = unpricedNote(run, type, fittings.placed, context.jointLabour, say);
  return {
    run: run.id,
    ok: true,
    length,
    pieces,
    joints,
    supports: hung.supports,
    taps: checked.taps,
    facing: facingOf(run, geometry),
    path: pathPoints(geometry, length),
    cost,
    findings: ordered(drawn, [...faults, ...unpriced, ...checked.findings, ...hung.findings]),
  };
}

/** No sections, no joints, no supports: the findings say why. Path and taps stay, for drawings and the electrical check. */
function barred(drawn: Drawn, findings: readonly Finding[]): RunLayout {
  const { run, geometry } = drawn;
  const length = Math.max(0, geometry.length);
  const places: readonly TapPlace[] = tapPlaces(run, geometry, length);
  return {
    run: run.id,
    ok: false,
    length,
    pieces: [],
    joints: [],
    supports: [],
    taps: places.map(({ tap, at }) => ({ id: tap.id, at, nearestLegal: null })),
    facing: [],
    path: pathPoints(geometry, length),
    cost: null,
    findings: ordered(drawn, findings),
  };
}

/** What is true of the run however its sections fall is added here, and everything is put in the fixed order. */
function ordered({ run, context, say, geometry, fittings }: Drawn, findings: readonly Finding[]): readonly Finding[] {
  const always = [
    ...unknownLimits(run, context.type, fittings.placed),
    ...checkFacing(run, geometry, fittings.placed, say),
    ...aboveStructure(run, context.level, geometry, say),
    ...oddEntries(run, geometry, context.parent, say),
  ];
  return orderFindings([...findings, ...always], new Map([[run.id, 0]]));
}
