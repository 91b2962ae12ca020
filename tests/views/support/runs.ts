import type { PlacedPiece, RunLayout } from '../../../src/domain/layout/result.ts';
import type { JointState, PieceState, SupportState, TapState } from '../../../src/domain/quality/states.ts';
import { FOOT, type Length } from '../../../src/domain/units/length.ts';
import type { StripItem, StripRecord, StripRun } from '../../../views/drawings/strip.tsx';

/** Invented runs of an invented job, laid out by hand, so that the drawings can be judged without the layout's own code. */
export interface DrawnRun {
  readonly run: StripRun;
  readonly layout: RunLayout;
  readonly record: StripRecord;
}

const feet = (value: number): Length => Math.round(value * FOOT);

function pieces(lengths: readonly (number | PlacedPiece['kind'] | PlacedPiece['hand'])[]): PlacedPiece[] {
  let from = 0;
  const placed: PlacedPiece[] = [];
  for (let index = 0; index < lengths.length; index += 3) {
    const to = from + feet(Number(lengths[index]));
    const kind = lengths[index + 1] as PlacedPiece['kind'];
    placed.push({ from, to, kind, hand: lengths[index + 2] as PlacedPiece['hand'] });
    from = to;
  }
  return placed;
}

function layoutOf(
  run: string,
  placed: readonly PlacedPiece[],
  supports: readonly number[],
  taps: readonly { id: string; at: number }[],
  facing: RunLayout['facing'],
  path: RunLayout['path'],
): RunLayout {
  return {
    run,
    ok: true,
    length: placed.at(-1)!.to,
    pieces: placed,
    joints: placed.map((piece) => ({ at: piece.from })),
    supports: supports.map((at) => ({ at: feet(at), loadKg: 55, continuousLoadKg: 61 })),
    taps: taps.map((tap) => ({ id: tap.id, at: feet(tap.at), nearestLegal: null })),
    facing,
    path,
    cost: null,
    findings: [],
  };
}

const plainRun: StripRun = {
  id: 'L2-R03-A',
  side: 'A',
  feed: {
    kind: 'end',
    fromRun: null,
    at: null,
    branchSide: null,
    supply: 'PDU-3',
    deviceA: 225,
    deviceHundredPercent: false,
    faultKA: 18,
    xOverR: 4,
    cable: null,
    terminations: 5,
  },
  conductorSide: 'right',
  legs: [{ turn: 'none' }] as unknown as StripRun['legs'],
  crossings: [],
  noJoint: [],
  noSupport: [],
};

const point = (at: number, x: number, y: number) => ({ at: feet(at), x: feet(x), y: feet(y), z: feet(12) });

const items = <State extends string>(
  run: string,
  letter: string,
  states: readonly State[],
  href = true,
): StripItem<State>[] =>
  states.map((state, index) => {
    const mark = `${run}-${letter}${String(index + 1).padStart(2, '0')}`;
    return { mark, state, ...(href ? { href: `#${mark}` } : {}) };
  });

/** 70 ft, 20/20/20/10, eight hangers, twenty tap-offs at 3.5 ft: partly built, with every state somewhere. */
export function standardRun(): DrawnRun {
  const taps = Array.from({ length: 20 }, (_, k) => ({ id: `T${k + 1}`, at: 1.75 + 3.5 * k }));
  const placed = pieces([20, 'stock', null, 20, 'stock', null, 20, 'stock', null, 10, 'stock', null]);
  const tapStates: TapState[] = ['in-service', 'in-service', 'checked', 'checked', 'set', 'removed', 'on-site'];
  const record: StripRecord = {
    pieces: items<PieceState>('L2-R03-A', 'P', ['accepted', 'joined', 'hung', 'planned']),
    joints: items<JointState>('L2-R03-A', 'J', ['accepted', 'closed', 'seated', 'open']),
    supports: items<SupportState>('L2-R03-A', 'H', [
      'accepted',
      'accepted',
      'set',
      'set',
      'set',
      'set',
      'planned',
      'planned',
    ]),
    taps: Object.fromEntries(
      taps.map((tap, k) => [tap.id, { mark: tap.id, state: tapStates[k] ?? 'planned', href: `#${tap.id}` }]),
    ),
  };
  return {
    run: plainRun,
    layout: layoutOf(
      'L2-R03-A',
      placed,
      [2, 11.5, 21.5, 31, 38.5, 48, 57.5, 67],
      taps,
      [{ leg: 1, compassDeg: 270, relative: 'right' }],
      [point(0, 0, 0), point(70, 70, 0)],
    ),
    record,
  };
}

/** The L-run of the brief's first scenario: a fire wall, a blocked zone, an inside elbow, taps on the left. */
export function cornerRun(): DrawnRun {
  const id = 'L1-R01-A';
  const placed = pieces([
    10,
    'stock',
    null,
    20,
    'stock',
    null,
    20,
    'stock',
    null,
    10,
    'stock',
    null,
    2,
    'elbow',
    'inside',
    20,
    'stock',
    null,
    10,
    'stock',
    null,
    5,
    'cut',
    null,
  ]);
  const taps = Array.from({ length: 16 }, (_, k) => ({ id: `T${k + 1}`, at: 3.2 + 5.25 * k })).filter(
    (tap) => Math.abs(tap.at - 39) > 2 && (tap.at < 59 || tap.at > 63),
  );
  return {
    run: {
      ...plainRun,
      id,
      conductorSide: 'left',
      legs: [{ turn: 'left' }, { turn: 'none' }] as unknown as StripRun['legs'],
      crossings: [{ at: feet(39), thickness: feet(1), kind: 'fire-wall', fireRatingMin: 60 }],
      noSupport: [{ from: feet(43), to: feet(47), reason: 'duct' }],
      noJoint: [{ from: feet(70), to: feet(74), reason: 'light' }],
    },
    layout: layoutOf(
      id,
      placed,
      [2, 11.5, 21.25, 31, 40, 49, 58, 64, 71.75, 79.5, 87.25, 95],
      taps,
      [
        { leg: 1, compassDeg: 90, relative: 'left' },
        { leg: 2, compassDeg: 180, relative: 'left' },
      ],
      [point(0, 0, 0), point(61, 61, 0), point(97, 61, 36)],
    ),
    record: {
      pieces: [
        ...items<PieceState>(id, 'P', ['accepted', 'accepted', 'joined', 'hung']),
        { mark: `${id}-P05`, state: 'on-site', fault: 'outside kind delivered, inside needed' },
        { mark: `${id}-P06`, state: 'quarantined' },
        { mark: `${id}-P07`, state: 'on-site' },
      ],
      joints: items<JointState>(id, 'J', ['accepted', 'accepted', 'reopened', 'seated']),
      supports: items<SupportState>(id, 'H', ['accepted', 'accepted', 'set', 'set', 'set', 'set', 'set'], false),
    },
  };
}

/** 200 ft with a tap-off every 18 inches: it must break over lines, never shrink. */
export function denseRun(): DrawnRun {
  const id = 'L3-R11-B';
  const taps = Array.from({ length: 130 }, (_, k) => ({ id: `T${String(k + 1).padStart(3, '0')}`, at: 1 + 1.5 * k }));
  const placed = pieces(Array.from({ length: 10 }, () => [20, 'stock', null] as const).flat());
  return {
    run: { ...plainRun, id, side: 'B', feed: { ...plainRun.feed, kind: 'centre', at: feet(100) } },
    layout: layoutOf(
      id,
      placed,
      Array.from({ length: 41 }, (_, k) => 0.75 + k * 4.95),
      taps,
      [{ leg: 1, compassDeg: 270, relative: 'right' }],
      [point(0, 0, 20), point(200, 200, 20)],
    ),
    record: {},
  };
}

/** A short run of odd pieces that is fed from a tee: everything that crowds. */
export function crowdedRun(): DrawnRun {
  const id = 'L1-R09-B';
  const placed = pieces([
    3,
    'stock',
    null,
    2,
    'tee',
    'near-left',
    1.5,
    'cut',
    null,
    2,
    'elbow',
    'outside',
    2,
    'cut',
    null,
    2,
    'elbow',
    'inside',
    4,
    'stock',
    null,
  ]);
  return {
    run: {
      ...plainRun,
      id,
      side: 'B',
      feed: { ...plainRun.feed, kind: 'tee', fromRun: 'L1-R08-B' },
      legs: [{ turn: 'right' }, { turn: 'left' }, { turn: 'none' }] as unknown as StripRun['legs'],
    },
    layout: layoutOf(
      id,
      placed,
      [1, 4, 8, 11, 15],
      [
        { id: 'RACK-12-UPPER', at: 1.5 },
        { id: 'RACK-13-UPPER', at: 2.4 },
        { id: 'RACK-14-UPPER', at: 5.7 },
        { id: 'RACK-15-UPPER', at: 9.5 },
        { id: 'RACK-16-UPPER', at: 13.4 },
        { id: 'RACK-17-UPPER', at: 14.4 },
        { id: 'RACK-18-UPPER', at: 15.4 },
      ],
      [
        { leg: 1, compassDeg: 0, relative: 'right' },
        { leg: 2, compassDeg: 270, relative: 'right' },
        { leg: 3, compassDeg: 0, relative: 'right' },
      ],
      [point(0, 0, 0), point(7.5, 0, 7.5), point(11.5, 4, 7.5), point(16.5, 4, 13)],
    ),
    record: {},
  };
}

/** A level with four runs, two of them round corners. */
export function floor() {
  const standard = standardRun();
  const corner = cornerRun();
  const shifted = (drawn: DrawnRun, x: number, y: number, id: string) => ({
    id,
    conductorSide: drawn.run.conductorSide,
    path: drawn.layout.path.map((p) => ({ ...p, x: p.x + feet(x), y: p.y + feet(y) })),
    pieces: drawn.layout.pieces.map((piece, index) => ({
      from: piece.from,
      to: piece.to,
      state: drawn.record.pieces?.[index]?.state ?? ('planned' as const),
    })),
    taps: drawn.layout.taps.map((tap) => tap.at),
    href: `#${id}`,
  });
  return {
    level: 'Level 2',
    runs: [
      shifted(standard, 0, 0, 'L2-R03-A'),
      shifted(standard, 0, 9, 'L2-R03-B'),
      shifted(standard, 0, 21, 'L2-R04-A'),
      shifted(corner, 0, 33, 'L2-R05-A'),
    ],
  };
}
