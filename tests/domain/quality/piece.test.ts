import { describe, expect, test } from 'vitest';
import { decidePiece, type PieceSite } from '../../../src/domain/quality/decide-piece.ts';
import { pieceCard, pieceState } from '../../../src/domain/quality/piece-card.ts';
import { handSeen, sideRemedy } from '../../../src/domain/quality/piece-side.ts';
import type { Actor, NewRecord, PieceBody, SiteRecord } from '../../../src/domain/quality/record.ts';
import { asked, clock, IBE, kept, LUND, OKAFOR, WEISS } from './cast.ts';

const site = (records: readonly SiteRecord[], more: Partial<PieceSite> = {}): PieceSite => ({
  mark: 'L2-R03-A-P08',
  kind: 'stock',
  hand: null,
  conductorSide: 'left',
  jointsBegun: [],
  card: pieceCard(records),
  now: clock('18:00'),
  version: 1,
  ...more,
});
const decide = (
  records: readonly SiteRecord[],
  record: NewRecord<PieceBody>,
  by: Actor = IBE,
  more: Partial<PieceSite> = {},
) => decidePiece(site(records, more), record, by);

const delivered = (lot: string | null = 'C-3') =>
  asked('piece', clock('07:00'), { kind: 'piece-on-site', lot } as const);
const hung = (conductorSide: 'left' | 'right' = 'left') =>
  asked('piece', clock('08:00'), { kind: 'piece-hung', conductorSide, endsConfirmedBy: 'K. Lund' } as const);
const wet = () => asked('piece', clock('09:00'), { kind: 'piece-quarantined', reason: 'crate 3 wet' } as const);
const release = (as: 'office' | 'inspector', at = clock('10:00')) =>
  asked('piece', at, {
    kind: 'piece-released',
    as,
    reason: 'dry by the readings of 11 May',
    decision: 'letter of 12 May',
  } as const);

describe('hanging a section', () => {
  test('with its conductors on the side of the run', () => {
    const decision = decide([kept(delivered(), LUND)], hung());
    expect(decision).toMatchObject({ ok: true, state: { lot: 'C-3', hung: { by: { name: 'R. Ibe' } } } });
  });

  test('scenario T4, J08: a straight section on the wrong side is turned end for end', () => {
    expect(decide([], hung('right'))).toMatchObject({
      refusal: { code: 'piece.side-turn', args: { needed: 'left', seen: 'right', kind: 'stock' } },
    });
  });

  test('scenario T4: an outside elbow where an inside one is needed stops the work; turning it is no way to hang it', () => {
    expect(decide([], hung('right'), IBE, { kind: 'elbow', hand: 'inside' })).toMatchObject({
      refusal: { code: 'piece.side-reorder', args: { neededHand: 'inside', seenHand: 'outside' } },
    });
  });

  test('only once', () => {
    expect(decide([kept(hung(), IBE)], hung(), LUND)).toMatchObject({
      refusal: { code: 'piece.already-hung', args: { by: 'R. Ibe' } },
    });
  });

  test('a correction of the record is no second hanging', () => {
    const first = kept(hung(), IBE);
    expect(decide([first], { ...hung(), supersedes: { id: first.id, cause: 'second name missing' } })).toMatchObject({
      ok: true,
    });
  });

  test('is confirmed at both ends by somebody else, or by nobody', () => {
    const alone = asked('piece', clock('08:00'), {
      kind: 'piece-hung',
      conductorSide: 'left',
      endsConfirmedBy: 'r. ibe ',
    } as const);
    expect(decide([], alone)).toMatchObject({ refusal: { code: 'piece.confirmed-alone' } });
    expect(decide([], { ...alone, body: { ...alone.body, endsConfirmedBy: null } })).toMatchObject({ ok: true });
  });

  test('is taken back when it was a slip, and not once a joint was begun on it', () => {
    const first = kept(hung(), IBE);
    const withdrawal = asked('piece', clock('09:00'), { kind: 'record-withdrawn' } as const, {
      supersedes: { id: first.id, cause: 'wrong piece tapped' },
    });
    expect(decidePiece(site([first]), withdrawal, IBE)).toMatchObject({ ok: true, state: { hung: null } });
    expect(decidePiece(site([first], { jointsBegun: ['L2-R03-A-J07'] }), withdrawal, IBE)).toMatchObject({
      refusal: { code: 'piece.joints-begun', args: { joints: ['L2-R03-A-J07'] } },
    });
  });

  test('a record about a joint is not taken on a piece', () => {
    expect(decide([], { ...hung(), subject: 'joint' })).toMatchObject({ refusal: { code: 'record.other-subject' } });
  });
});

describe('quarantine', () => {
  test('bars hanging, with its reason', () => {
    expect(decide([kept(wet(), LUND)], hung())).toMatchObject({ ok: false });
    expect(decide([kept(wet(), LUND)], { ...hung(), at: clock('11:00') })).toMatchObject({
      refusal: { code: 'piece.quarantined', args: { reason: 'crate 3 wet' } },
    });
  });

  test('ends with two signatures, by an office and an inspector', () => {
    const one = decide([kept(wet(), LUND)], release('office'), WEISS);
    expect(one).toMatchObject({
      ok: true,
      state: { quarantine: { office: { by: { name: 'T. Weiss' } } } },
      remarks: [{ code: 'piece.release-awaits', args: { role: 'inspector' } }],
    });
    const two = decide([kept(wet(), LUND), kept(release('office'), WEISS)], release('inspector'), OKAFOR);
    expect(two).toMatchObject({ ok: true, state: { quarantine: null }, remarks: [] });
  });

  test('the order of the signatures is free', () => {
    const signed = pieceCard([kept(wet(), LUND), kept(release('inspector'), OKAFOR), kept(release('office'), WEISS)]);
    expect(signed.quarantine).toBeNull();
  });

  test('nobody signs in a role that is not theirs, twice in one, or for both', () => {
    const begun = [kept(wet(), LUND), kept(release('office'), WEISS)];
    expect(decide(begun, release('inspector'), WEISS)).toMatchObject({
      refusal: { code: 'piece.release-role', args: { as: 'inspector', role: 'office' } },
    });
    expect(decide(begun, release('office'), WEISS)).toMatchObject({ refusal: { code: 'piece.release-signed' } });
    expect(decide(begun, release('inspector'), { ...WEISS, role: 'inspector' })).toMatchObject({
      refusal: { code: 'piece.release-same-person' },
    });
  });

  test('a signature given before a new quarantine does not count for it', () => {
    const records = [
      kept(wet(), LUND),
      kept(release('office'), WEISS),
      kept(release('inspector'), OKAFOR),
      kept({ ...wet(), at: clock('11:00') }, LUND),
    ];
    expect(pieceCard(records).quarantine).toMatchObject({ office: null, inspector: null });
  });

  test('is not taken back by a withdrawal, and not released where there is none', () => {
    const quarantined = kept(wet(), LUND);
    const withdrawal = asked('piece', clock('10:00'), { kind: 'record-withdrawn' } as const, {
      supersedes: { id: quarantined.id, cause: 'was dry' },
    });
    expect(decidePiece(site([quarantined]), withdrawal, LUND)).toMatchObject({
      refusal: { code: 'record.cannot-withdraw' },
    });
    expect(decide([], release('office'), WEISS)).toMatchObject({ refusal: { code: 'piece.not-quarantined' } });
  });

  test('a released piece is where it was before: hung, on site', () => {
    const freed = [kept(wet(), LUND), kept(release('office'), WEISS), kept(release('inspector'), OKAFOR)];
    expect(pieceState(pieceCard([kept(delivered(), LUND), ...freed]), ['open'])).toBe('on-site');
    expect(pieceState(pieceCard([kept(delivered(), LUND), kept(hung(), IBE), ...freed]), ['open'])).toBe('hung');
  });
});

describe('the state of a piece with its joints', () => {
  const card = pieceCard([kept(delivered(), LUND), kept(hung(), IBE)]);

  test.each([
    [['open', 'open'], 'hung'],
    [['closed', 'seated'], 'hung'],
    [['closed', 'closed'], 'joined'],
    [['accepted', 'closed'], 'joined'],
    [['accepted', 'accepted'], 'accepted'],
    [['accepted', 'reopened'], 'hung'],
    [['accepted'], 'accepted'],
    [[], 'accepted'],
  ] as const)('joints %j make a hung piece %s', (joints, state) => {
    expect(pieceState(card, joints)).toBe(state);
  });

  test('without being hung it is on site or planned, whatever its joints say', () => {
    expect(pieceState(pieceCard([]), ['accepted'])).toBe('planned');
    expect(pieceState(pieceCard([kept(delivered(), LUND)]), ['accepted'])).toBe('on-site');
  });

  test('a hung piece that gets wet is quarantined', () => {
    expect(pieceState(pieceCard([kept(hung(), IBE), kept(wet(), LUND)]), ['accepted', 'accepted'])).toBe('quarantined');
  });
});

/**
 * The same question by vectors, with the frame of the job document (heading h, up u): left is u × h; a left turn goes on along
 * u × h, a right turn along h × u, up turns h into u and u into −h. A part is the pair of what each of its mouths sees.
 */
type Vector = readonly [number, number, number];
const cross = ([a, b, c]: Vector, [x, y, z]: Vector): Vector => [b * z - c * y, c * x - a * z, a * y - b * x];
const minus = ([a, b, c]: Vector): Vector => [0 - a, 0 - b, 0 - c];
const same = (a: Vector, b: Vector) => a.every((value, index) => value === b[index]);

interface Mouth {
  readonly h: Vector;
  readonly u: Vector;
}

const IN: Mouth = { h: [1, 0, 0], u: [0, 0, 1] };
const leftOf = ({ h, u }: Mouth) => cross(u, h);
const turned = (from: Mouth, turn: 'none' | 'left' | 'right' | 'up' | 'down'): Mouth => {
  if (turn === 'none') return from;
  if (turn === 'left') return { h: leftOf(from), u: from.u };
  if (turn === 'right') return { h: minus(leftOf(from)), u: from.u };
  return turn === 'up' ? { h: from.u, u: minus(from.h) } : { h: minus(from.u), u: from.h };
};
/** The part walked from its other end: its headings reversed, the slot where it was. */
const walkedBack = (out: Mouth): Mouth => ({ h: minus(out.h), u: out.u });
const turnSeen = (from: Mouth, to: Mouth) =>
  (['none', 'left', 'right', 'up', 'down'] as const).find((turn) => same(turned(from, turn).h, to.h));

describe('turning a piece end for end, worked by vectors', () => {
  test.each([
    ['none', null, true],
    ['up', 'slot-outside', true],
    ['down', 'slot-inside', true],
    ['left', 'inside', false],
    ['right', 'outside', false],
  ] as const)('a piece that turns %s', (turn, hand, turningHelps) => {
    const out = turned(IN, turn);
    const [back, forth] = [walkedBack(out), walkedBack(IN)];
    // It may hang the other way round when it then makes the same turn; the other side must then face the conductors.
    const sameTurn = turnSeen(back, forth) === turn;
    const sideFlips = same(
      turn === 'left' || turn === 'right' ? leftOf(back) : leftOf(back),
      minus(turn === 'none' ? leftOf(IN) : leftOf(out)),
    );
    expect(sameTurn && sideFlips).toBe(turningHelps);
    expect(sideRemedy({ kind: turn === 'none' ? 'stock' : 'elbow', hand })).toBe(turningHelps ? 'turn' : 'reorder');
  });

  test('a horizontal elbow walked back turns the other way with its conductors on the other side: still inside', () => {
    const out = turned(IN, 'left');
    expect(turnSeen(walkedBack(out), walkedBack(IN))).toBe('right');
    expect(same(leftOf(walkedBack(out)), minus(leftOf(out)))).toBe(true);
  });

  test('a tee walked back keeps its branch on the side of the conductors: near stays near', () => {
    const branch: Vector = leftOf(IN);
    const conductors: Vector = leftOf(IN);
    const nearForth = same(branch, conductors);
    const seenBack = {
      branchLeft: same(branch, leftOf(walkedBack(IN))),
      conductorsLeft: same(conductors, leftOf(walkedBack(IN))),
    };
    expect(nearForth && seenBack.branchLeft === seenBack.conductorsLeft).toBe(true);
    expect(sideRemedy({ kind: 'tee', hand: 'near-left' })).toBe('reorder');
    expect(handSeen('near-left', 'left', 'right')).toBe('far-left');
  });
});
