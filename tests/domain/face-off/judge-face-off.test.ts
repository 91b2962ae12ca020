import { describe, expect, it } from 'vitest';
import { demoJob } from '../../../src/document/demo/demo-job.ts';
import { printFigures } from '../../../src/document/print-figures.ts';
import { toModel } from '../../../src/document/to-model.ts';
import { judgeFaceOff } from '../../../src/domain/face-off/judge-face-off.ts';
import { figures } from '../../../src/domain/figures.ts';
import { layoutJob } from '../../../src/domain/layout/layout-job.ts';
import { aJob, aLevel, feet } from '../../support/job.ts';
import { layoutType } from '../layout/l-run.ts';
import { boxedType, inShort, judged, row } from './hall.ts';

// Worked by hand. Run A heads east with its conductors on the left, so its taps face north; run B hangs north of it with its
// conductors on the right, so its taps face south. Between two boxes that face each other there is the distance of the two
// centre lines less what each box stands out: 6'-0" - 2 × 1'-4" = 3'-4".
const facing = (apart: number, a: readonly number[] = [10], b: readonly number[] = [10]) => [
  row('A', 'left', { taps: a }),
  row('B', 'right', { y: apart, taps: b }),
];

describe('taps of two parallel runs that face each other', () => {
  it('have room when there is more than has to be kept free', () => {
    expect(judged(facing(6))).toEqual([]);
  });

  it('have room when there is exactly what has to be kept free: 5 ft 8 in less 2 ft 8 in is 3 ft', () => {
    expect(judged(facing(5 + 8 / 12))).toEqual([]);
  });

  it('are told, both of them, when there is 2 in less, with the nearest legal places and how far to part the runs', () => {
    const found = judged(facing(5.5));
    expect(inShort(found)).toEqual(['A 10 warning', 'B 10 warning']);
    expect(found.map(({ rule }) => rule)).toEqual(['tap.face-off', 'tap.face-off']);
    expect(found.map(({ message }) => message)).toEqual([
      `Tap T1 at 10'-0": between its box and that of tap T1 of run B at 10'-0", which it faces, there is 2'-10" of room and ` +
        `3'-0" is needed, 2" too little. Nearest legal places: 9'-0" (1'-0" back) or 11'-0" (1'-0" on). ` +
        `Or hang the two runs 2" farther apart.`,
      `Tap T1 at 10'-0": between its box and that of tap T1 of run A at 10'-0", which it faces, there is 2'-10" of room and ` +
        `3'-0" is needed, 2" too little. Nearest legal places: 9'-0" (1'-0" back) or 11'-0" (1'-0" on). ` +
        `Or hang the two runs 2" farther apart.`,
    ]);
    expect(found[0]?.source).toContain("the local code's working space decides (NEC 110.26(A))");
  });

  it('are a stop when the boxes reach into each other: 2 ft less 2 ft 8 in is 8 in too little', () => {
    const found = judged(facing(2));
    expect(inShort(found)).toEqual(['A 10 stop', 'B 10 stop']);
    expect(found[0]?.message).toContain(
      `its box and that of tap T1 of run B at 10'-0", which it faces, reach 8" into each other.`,
    );
    // 8" to part the boxes, and 3'-0" to be kept free between them.
    expect(found[0]?.message).toContain(`Or hang the two runs 3'-8" farther apart.`);
  });

  it('are not in the same space when the boxes only touch', () => {
    const touching = boxedType({ clearRoom: 0 });
    expect(judged(facing(2 + 8 / 12), [touching])).toEqual([]);
    expect(inShort(judged(facing(2 + 8 / 12 - 1 / 192), [touching]))).toEqual(['A 10 stop', 'B 10 stop']);
  });

  it('have room once one stands a whole box further along, and not an inch before', () => {
    expect(judged(facing(5.5, [10], [11]))).toEqual([]);
    expect(judged(facing(5.5, [10], [9]))).toEqual([]);
    expect(inShort(judged(facing(5.5, [10], [10 + 11 / 12])))).toEqual([
      'A 10 warning',
      'B 10.916666666666666 warning',
    ]);
  });

  it('can all be moved to the places that are offered', () => {
    const found = judged(facing(5.5, [5, 10, 15], [5, 10, 15]));
    expect(inShort(found)).toHaveLength(6);
    expect(found[0]?.message).toContain(`Nearest legal places: 4'-0" (1'-0" back) or 6'-0" (1'-0" on)`);
    expect(judged(facing(5.5, [4, 9, 14], [5, 10, 15]))).toEqual([]);
  });

  it('are offered a place that is clear of joints and of their own neighbours too', () => {
    // T2 of A stands at 11'-6", a foot and a half past T1: the place at 11'-0", free of B's box, is not free of T2's.
    const [, ...rest] = judged(facing(5.5, [10, 11.5], [10]));
    expect(rest).toHaveLength(1);
    const [first] = judged(facing(5.5, [10, 11.5], [10]));
    // The next free place is past T2's own box, 1 ft on from its centre.
    expect(first?.message).toContain(`Nearest legal places: 9'-0" (1'-0" back) or 12'-6" (2'-6" on).`);
  });

  it('are told of the nearer one, and how many more there are', () => {
    const [first] = judged(facing(5.5, [10], [9.5, 10.25]));
    expect(first?.message).toContain('There is too little room from 1 more besides.');
  });

  it('face each other whichever way each run is drawn', () => {
    // B is drawn from its far end: it heads west from 20 ft, its conductors on the left, its taps still face south.
    const turned = row('B', 'left', { x: 20, y: 5.5, headingDeg: 180, taps: [10] });
    expect(inShort(judged([row('A', 'left', { taps: [10] }), turned]))).toEqual(['A 10 warning', 'B 10 warning']);
  });

  it('face away from each other when the runs hang back to back', () => {
    const backs = [row('A', 'right', { taps: [10] }), row('B', 'left', { y: 2, taps: [10] })];
    expect(judged(backs)).toEqual([]);
  });

  it('need what the one that needs more needs, where two types meet', () => {
    const wide = boxedType({ clearRoom: feet(3.5) }, { id: 'wide' });
    const [a, b] = facing(6);
    const found = judged([a!, { ...b!, type: 'wide' }], [boxedType(), wide]);
    expect(found.map(({ message }) => message.split('there is ')[1]?.split('.')[0])).toEqual([
      `3'-4" of room and 3'-6" is needed, 2" too little`,
      `3'-4" of room and 3'-6" is needed, 2" too little`,
    ]);
  });

  it('say the local code of an IEC job', () => {
    const project = { ...aJob().project, codeBasis: 'IEC' as const, units: 'metric' as const };
    const [first] = judged(facing(5.5), [boxedType()], { project });
    expect(first?.source).toContain('IEC 60364-7-729');
    expect(first?.message).toContain('0.864 m of room and ≈0.914 m is needed');
  });
});

describe('a tap that faces a run’s back', () => {
  // B faces north, away from A: only its housing, counted by its centre line, is before A's taps.
  const back = (apart: number) => [row('A', 'left', { taps: [10] }), row('B', 'left', { y: apart, taps: [4] })];

  it('needs its room as well: 4 ft less 1 ft 4 in is 2 ft 8 in', () => {
    const found = judged(back(4));
    expect(inShort(found)).toEqual(['A 10 warning']);
    expect(found[0]?.message).toBe(
      `Tap T1 at 10'-0": between its box and the centre line of run B there is 2'-8" of room and 3'-0" is needed, 4" too little. ` +
        `No place on this run is legal for it; move other taps or shift the joints. Or hang the two runs 4" farther apart.`,
    );
    expect(judged(back(4 + 4 / 12))).toEqual([]);
  });

  it('may not reach past its centre line', () => {
    const found = judged(back(1));
    expect(inShort(found)).toEqual(['A 10 stop']);
    expect(found[0]?.message).toContain('its box reaches 4" past the centre line of run B.');
  });

  it('has room beside the end of that run', () => {
    const short = row('B', 'left', { y: 4, length: 5 });
    expect(judged([row('A', 'left', { taps: [5.5] }), short])).toEqual([]);
    const found = judged([row('A', 'left', { taps: [5.4] }), short]);
    expect(found[0]?.message).toContain(`Nearest legal place: 5'-6"`);
  });

  it('has room past a run that crosses before it, or has not', () => {
    // B heads north across A's aisle at 10 ft, from 5 ft north of A: 5'-0" - 1'-4" = 3'-8" before the box.
    const crossing = (y: number) => row('B', 'left', { x: 10, y, headingDeg: 90 });
    expect(judged([row('A', 'left', { taps: [10] }), crossing(5)])).toEqual([]);
    const found = judged([row('A', 'left', { taps: [10] }), crossing(4)]);
    expect(found[0]?.message).toContain(
      `between its box and the centre line of run B there is 2'-8" of room and 3'-0" is needed`,
    );
    expect(found[0]?.message).toContain(`Nearest legal places: 9'-6" (6" back) or 10'-6" (6" on).`);
  });
});

describe('runs at different heights', () => {
  const heights = (z: number) => [row('A', 'left', { taps: [10] }), row('B', 'right', { y: 2, z, taps: [10] })];

  it('do not meet where the boxes are known to be less high than the runs are apart', () => {
    const known = boxedType({ boxHeight: feet(1) });
    expect(judged(heights(11), [known])).toEqual([]);
    expect(inShort(judged(heights(10.9), [known]))).toEqual(['A 10 stop', 'B 10 stop']);
  });

  it('are unknown, and keep the run from the floor, where nobody stated the height of a box', () => {
    const [first] = judged(heights(11));
    expect(first).toMatchObject({ rule: 'limit.unknown', severity: 'warning', run: 'A' });
    expect(first?.message).toContain(
      `They hang at 10'-0" and 11'-0", and the height of a box is not stated: whether they meet is unknown, not a pass. Enter it.`,
    );
  });
});

describe('legs of one run', () => {
  const leg = (length: number, turn: 'left' | 'none') => ({ length: feet(length), turn, tapsMustFace: null });
  // East, north, west: with the conductors on the left all taps face the inside of the U. Elbows take 1 ft of each leg.
  const u = (across: number, taps: readonly number[]) =>
    row('U', 'left', { taps }, { legs: [leg(21, 'left'), leg(across, 'left'), leg(21, 'none')] });

  it('that face each other across a U are compared', () => {
    // The leg across is 7 ft: 7'-0" - 2'-8" = 4'-4". Taps at 10 ft of the first leg and 10 ft short of the second corner.
    const clear = boxedType({ clearRoom: feet(4.5) });
    const across = 7;
    const opposite = 21 + across + (21 - 10);
    const found = judged([u(across, [10, opposite])], [clear]);
    expect(inShort(found)).toEqual([`U 10 warning`, `U ${opposite} warning`]);
    expect(found[0]?.message).toContain(`that of tap T2 of this run at 39'-0", which it faces, there is 4'-4" of room`);
    expect(found[0]?.message).not.toContain('farther apart');
    expect(judged([u(across, [10, opposite])])).toEqual([]);
  });

  it('that meet at an inside corner are compared box with box', () => {
    // Taps 1'-0" from the corner on either leg: boxes of 1'-4" by 1'-0" on the inside of it stand in one another.
    const close = boxedType(
      { clearRoom: 0 },
      { tap: { ...layoutType().tap, jointClear: 0 }, elbow: { leg: feet(0.5), weightKg: 0, handed: true } },
    );
    const legs = [leg(20.5, 'left'), leg(20.5, 'none')];
    const corner = row('L', 'left', { taps: [19.5, 21.5] }, { legs });
    const found = judged([corner], [close]);
    expect(inShort(found)).toEqual(['L 19.5 stop', 'L 21.5 stop']);
    expect(found[0]?.message).toContain(`its box and that of tap T2 of this run at 21'-6" take the same space`);
    const apart = row('L', 'left', { taps: [18, 23] }, { legs });
    expect(judged([apart], [close])).toEqual([]);
  });

  it('that go straight on are one: a tap is never offered the place where they meet', () => {
    const straight = [leg(10, 'none'), leg(10, 'none')];
    const a = row('A', 'left', { taps: [9.75] }, { legs: straight });
    const [first] = judged([a, row('B', 'right', { y: 5.5, taps: [10] })]);
    expect(first?.message).toContain(`Nearest legal places: 9'-0" (9" back) or 11'-0" (1'-3" on).`);
  });
});

describe('what is compared', () => {
  it('is a branch too, which hangs where its tee stands', () => {
    // The branch leaves northwards at 11 ft, turns west after 6 ft and comes back over the parent, its taps facing south.
    const parent = row('P', 'left', { length: 22, taps: [5] });
    const branch = row(
      'BR',
      'left',
      { taps: [4 + 7] },
      {
        hasStart: false,
        feed: { ...parent.feed, kind: 'tee', fromRun: 'P', at: feet(11), branchSide: 'left' },
        legs: [
          { length: feet(7), turn: 'left', tapsMustFace: null },
          { length: feet(11), turn: 'none', tapsMustFace: null },
        ],
      },
    );
    // Distance 0 is the face of the tee's arm, 1 ft north: the corner is at 6, and 11 is 5 ft west of it: over 6 ft of the parent.
    const wide = boxedType({ clearRoom: feet(4.5) });
    const moved = { ...branch, taps: branch.taps.map((tap) => ({ ...tap, place: { at: feet(12) } })) };
    expect(inShort(judged([parent, moved], [wide]))).toEqual(['P 5 warning', 'BR 12 warning']);
    expect(inShort(judged([parent, branch], [wide]))).toEqual([]);
  });

  it('is no run that states no place, and no branch of such a run', () => {
    const [a, b] = facing(2);
    expect(judged([a!, { ...b!, hasStart: false }])).toEqual([]);
  });

  it('is no run of another level', () => {
    const [a, b] = facing(2);
    const levels = [aLevel(), aLevel({ id: 'F2', order: 2 })];
    expect(judged([a!, { ...b!, level: 'F2' }], [boxedType()], { levels })).toEqual([]);
  });

  it('is no run whose sections cannot be laid: that is a stop already', () => {
    const [a, b] = facing(2);
    const barred = { ...b!, legs: [{ length: feet(19), turn: 'none' as const, tapsMustFace: null }] };
    expect(judged([a!, barred])).toEqual([]);
  });

  it('is unknown for a type that does not say how far its boxes stand out, beside one that does', () => {
    const [a, b] = facing(2);
    const silent = layoutType({ id: 'silent' });
    const found = judged([a!, { ...b!, type: 'silent' }], [boxedType(), silent]);
    expect(found.map(({ rule, run }) => `${rule} ${run}`)).toEqual(['tap.face-off A', 'limit.unknown B']);
  });

  it('is told for the runs that are asked for alone, against all others', () => {
    const job = aJob({ types: [boxedType()], runs: facing(5.5) });
    const found = judgeFaceOff(job, layoutJob(job), new Set(['B']));
    expect(inShort(found)).toEqual(['B 10 warning']);
  });
});

describe('a job whose sheets say nothing of boxes', () => {
  it('is figured as ever: the keys add findings and nothing else', () => {
    const silent = toModel(demoJob());
    expect(judgeFaceOff(silent, layoutJob(silent))).toEqual([]);
    const document = demoJob();
    const thin = document.buswayTypes.map((type) => ({ ...type, tap: { ...type.tap, boxDepthMm: 1, faceClearMm: 0 } }));
    const print = (job: typeof silent) => JSON.stringify(printFigures(figures(job)));
    expect(print(toModel({ ...document, buswayTypes: thin }))).toBe(print(silent));
  });

  it('asks for the one limit where it states the other', () => {
    const rules = (front: Parameters<typeof boxedType>[0]) =>
      layoutJob(aJob({ types: [boxedType(front)], runs: [row('A', 'left', { taps: [10] })] }))[0]!
        .findings.filter(({ rule }) => rule === 'limit.unknown')
        .map(({ message }) => message.split(' is not stated')[0]);
    const before = rules({ boxDepth: null, clearRoom: null });
    expect(rules({})).toEqual(before);
    expect(rules({ boxDepth: null })).toEqual(expect.arrayContaining(['How far the tap-off box stands out']));
    expect(rules({ clearRoom: null })).toEqual(
      expect.arrayContaining(['The room to be kept free before a tap-off box']),
    );
    expect(rules({ boxDepth: null })).toHaveLength(before.length + 1);
    expect(rules({ clearRoom: null })).toHaveLength(before.length + 1);
  });
});
