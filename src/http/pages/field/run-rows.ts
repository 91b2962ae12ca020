import { cardHref } from '../../../../views/components/card-href.ts';
import { handWords, pieceWord } from '../../../../views/drawings/strip/words.ts';
import type { FieldRunPageProps } from '../../../../views/pages/field/run.tsx';
import type { ThingRow } from '../../../../views/pages/field/thing-rows.tsx';
import { endWord } from '../../../../views/words/record-summary.ts';
import { verdictWord } from '../../../../views/words/run-status.ts';
import type { ReleasedRun } from '../../../actions/boards/field/field-run.ts';
import { toTap } from '../../../document/model/to-tap.ts';
import type { TapDocument } from '../../../document/schema/tap.ts';
import type { PlacedPiece, RunLayout } from '../../../domain/layout/result.ts';
import type { UnitSystem } from '../../../domain/model.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../../domain/quality/states.ts';
import { formatLength } from '../../../domain/units/format-length.ts';
import { shortMark } from './along.ts';
import { facesAt } from './facing.ts';

type Rows = Pick<FieldRunPageProps, 'hangers' | 'pieces' | 'joints' | 'ends' | 'taps' | 'tests'>;

export function rowsOf(jobId: string, released: ReleasedRun, units: UnitSystem): Rows {
  const { floor, state } = released;
  const { layout, type } = floor;
  const steps = type.joint.steps?.length ?? 0;
  const whole = `/jobs/${jobId}/runs/${floor.id}`;
  return {
    hangers: floor.supports.map((row) => ({
      id: row.id,
      href: cardHref(jobId, 'support', row.id),
      mark: shortMark(floor, row.mark),
      what: `${row.measuredU80 === null ? 'at' : 'measured at'} ${formatLength(row.measuredU80 ?? row.atU80, units)}`,
      state: row.state as SupportState,
    })),
    pieces: floor.pieces.map((row, index) => ({
      id: row.id,
      href: cardHref(jobId, 'piece', row.id),
      mark: shortMark(floor, row.mark),
      what: pieceWhat(layout.pieces[index], layout, units),
      state: row.state as PieceState,
    })),
    joints: floor.joints.map((row) => ({
      id: row.id,
      href: cardHref(jobId, 'joint', row.id),
      mark: shortMark(floor, row.mark),
      what: `at ${formatLength(row.atU80, units)}${jointProgress(row, steps)}`,
      state: row.state as JointState,
    })),
    taps: floor.taps.map((row) => ({
      id: row.id,
      href: cardHref(jobId, 'tap', row.id),
      mark: row.key,
      what: `at ${formatLength(row.atU80, units)}, ${toTap(row.spec as unknown as TapDocument).phases}`,
      state: row.state as TapState,
    })),
    ends: [
      ...state.card.ends.map(({ end, closed }) => ({
        id: end,
        href: `${whole}/ends`,
        mark: end,
        what: `${endWord(end)} with its cap`,
        state: closed === null ? ('open' as const) : ('closed' as const),
      })),
      {
        id: 'slot',
        href: `${whole}/ends`,
        mark: 'slot',
        what: 'unused slot closed',
        state: state.card.slot === null ? ('open' as const) : ('closed' as const),
      },
    ],
    tests: [testRow(`${whole}/insulation`, released)],
  };
}

function jointProgress(
  { state, stepsDone }: { readonly state: string; readonly stepsDone: number },
  steps: number,
): string {
  return state === 'accepted' || stepsDone === 0 ? '' : `, ${stepsDone} of ${steps} steps`;
}

function pieceWhat(piece: PlacedPiece | undefined, layout: RunLayout, units: UnitSystem): string {
  if (piece === undefined) return '';
  const faces = facesAt(layout, piece.from);
  return [
    `${pieceWord(piece.kind)} ${formatLength(piece.to - piece.from, units)}`,
    ...(piece.hand === null ? [] : [handWords(piece.hand)]),
    ...(faces === null ? [] : [`taps face ${faces.toUpperCase()}`]),
  ].join(', ');
}

function testRow(href: string, { state }: ReleasedRun): ThingRow {
  const { test, open } = state;
  const isStale = open.some(({ code }) => code === 'test-stale');
  const row = { id: 'insulation', href, mark: 'IR', what: 'insulation, all pairs' };
  if (test === null) return { ...row, state: 'planned', word: 'to do' };
  if (isStale) return { ...row, state: 'reopened', word: 'stale' };
  return { ...row, state: test.verdict === 'pass' ? 'accepted' : 'fault', word: verdictWord(test.verdict) };
}
