import type { PlacedPiece } from '../../src/domain/layout/result.ts';
import type { UnitSystem } from '../../src/domain/model.ts';
import type { PieceAt, RevisionDifference } from '../../src/domain/revision/difference.ts';
import { formatLength } from '../../src/domain/units/format-length.ts';
import { formatWeight } from '../../src/domain/units/quantities.ts';
import { handWords, pieceWord } from '../drawings/strip/words.ts';
import { activityWord } from './activities.ts';
import { factWords } from './revision-facts.ts';

/** One sentence with its count, and what it counts. */
export interface ChangeWords {
  readonly text: string;
  readonly things: readonly string[];
}

/** What differs, in words: what comes, goes, moves and changes. */
export function changeWords(difference: RevisionDifference, units: UnitSystem): ChangeWords[] {
  const { pieces, joints, supports, taps, length, facts } = difference;
  const say = (at: number) => formatLength(at, units);
  const at = (point: { readonly at: number }) => `at ${say(point.at)}`;
  const moved = ({ before, after }: { before: { at: number }; after: { at: number } }) =>
    `from ${say(before.at)} to ${say(after.at)}`;
  return told([
    [count(pieces.added.length, 'piece comes', 'pieces come'), pieces.added.map(pieceAt(units))],
    [
      count(
        pieces.removed.length,
        'piece leaves and is retired with its records',
        'pieces leave and are retired with their records',
      ),
      pieces.removed.map(pieceAt(units)),
    ],
    [
      count(pieces.replaced.length, 'piece is replaced where it stands', 'pieces are replaced where they stand'),
      pieces.replaced.map(
        ({ before, after }) =>
          `${pieceAt(units)(before)}: now ${what(after.piece)}; the old one is retired with its records`,
      ),
    ],
    [
      count(
        pieces.moved.length,
        'piece keeps its records at another distance',
        'pieces keep their records at another distance',
      ),
      pieces.moved.map(
        ({ before, after }) => `${pieceAt(units)(before)}: now from ${say(after.piece.from)} to ${say(after.piece.to)}`,
      ),
    ],
    [count(joints.removed.length, 'joint goes', 'joints go'), joints.removed.map(at)],
    [
      count(joints.moved.length, 'joint is at another distance', 'joints are at another distance'),
      joints.moved.map(moved),
    ],
    [count(supports.removed.length, 'hanger comes down', 'hangers come down'), supports.removed.map(at)],
    [count(taps.added.length, 'tap-off comes', 'tap-offs come'), taps.added.map((tap) => `${tap.tap.id} ${at(tap)}`)],
    [
      count(
        taps.removed.length,
        'tap-off leaves and is retired with its records',
        'tap-offs leave and are retired with their records',
      ),
      taps.removed.map((tap) => `${tap.tap.id} ${at(tap)}`),
    ],
    [
      count(taps.moved.length, 'tap-off moves', 'tap-offs move'),
      taps.moved.map((pair) => `${pair.after.tap.id} ${moved(pair)}`),
    ],
    [
      count(
        taps.changed.length,
        'tap-off changes in its device, phase, load, cord or name',
        'tap-offs change in device, phase, load, cord or name',
      ),
      taps.changed.map(({ after }) => after.tap.id),
    ],
    ...facts.map((one): [string, []] => [factWords(one, units), []]),
    [length.before === length.after ? null : `The run is ${say(length.after)} long, before ${say(length.before)}`, []],
  ]);
}

/** What the step takes up again, in words. */
export function reopenedWords({ reopened }: RevisionDifference, units: UnitSystem): ChangeWords[] {
  const { joints, supports, loads, rods, turnedOver, insulationTests, labels, drops, hours } = reopened;
  const at = (point: { readonly at: number }) => `at ${formatLength(point.at, units)}`;
  const cord = (length: number | null) => (length === null ? 'none' : formatLength(length, units));
  const labelled = [
    ...labels.joints.map((joint) => `joint ${at(joint)}`),
    ...labels.taps.map((tap) => `tap-off ${tap}`),
  ];
  const more = hours.reduce((sum, line) => sum + line.after - line.before, 0);
  return told([
    [turnedOver ? 'The run is turned over: what hangs comes down and is hung facing the other way' : null, []],
    [count(joints.length, 'joint to make', 'joints to make'), joints.map(at)],
    [count(supports.length, 'hanger to set', 'hangers to set'), supports.map(at)],
    [count(rods, 'hanger that stays gets another rod', 'hangers that stay get other rods'), []],
    [
      count(loads.length, 'hanger that stays carries another load', 'hangers that stay carry another load'),
      loads.map(
        ({ before, after }) =>
          `${at(after)}: ${formatWeight(after.loadKg, units)}, before ${formatWeight(before.loadKg, units)}`,
      ),
    ],
    [
      insulationTests.length === 0
        ? null
        : `The insulation test of ${insulationTests.length === 1 ? 'this run' : `${insulationTests.length} runs that are joined`} is void once the work is done`,
      insulationTests.map((run) => `run ${run}`),
    ],
    [count(labelled.length, 'label to make and set', 'labels to make and set'), labelled],
    [
      count(drops.length, 'drop cord of another length', 'drop cords of another length'),
      drops.map(({ tap, before, after }) => `${tap}: ${cord(after)}, before ${cord(before)}`),
    ],
    [
      hours.length === 0 ? null : `${signed(more)} h likely, with the level’s conditions and before learning`,
      hours.map(
        ({ activity, before, after }) =>
          `${activityWord(activity)}: ${signed(after - before)} h (${after.toFixed(2)}, before ${before.toFixed(2)})`,
      ),
    ],
  ]);
}

function told(lines: readonly (readonly [string | null, readonly string[]])[]): ChangeWords[] {
  return lines.flatMap(([text, things]) => (text === null ? [] : [{ text, things }]));
}

function count(number: number, one: string, many: string): string | null {
  return number === 0 ? null : `${number} ${number === 1 ? one : many}`;
}

function pieceAt(units: UnitSystem) {
  return ({ index, piece }: PieceAt) =>
    `piece ${index + 1} from the feed, ${what(piece)}, ${formatLength(piece.to - piece.from, units)} from ${formatLength(piece.from, units)}`;
}

function what({ kind, hand }: PlacedPiece): string {
  return hand === null ? pieceWord(kind) : `${pieceWord(kind)}, ${handWords(hand)}`;
}

/** Hours with their sign, which is a minus and no hyphen. */
function signed(hours: number): string {
  return `${hours < 0 ? '−' : '+'}${Math.abs(hours).toFixed(2)}`;
}
