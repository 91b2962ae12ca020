import { credited, type Decision, informationOnly, refused } from './decision.ts';
import { guardRecord, type Standing } from './guard-record.ts';
import { type JointCard, jointCard, type StepBody } from './joint-card.ts';
import { stepFault } from './joint-step-fault.ts';
import { type Actor, entered, type JointBody, type NewRecord, type WithdrawnBody } from './record.ts';
import type { JointRefusal, PieceRefusal } from './refusal.ts';
import { isHung, type PieceState } from './states.ts';

/** A piece that the joint joins: the two beside it, or the one and the branch's tee. */
export interface Neighbour {
  readonly mark: string;
  readonly state: PieceState;
  readonly quarantineReason: string | null;
}

export interface JointSite {
  readonly card: JointCard;
  readonly neighbours: readonly Neighbour[];
  readonly now: Standing['now'];
  readonly version: number;
}

/**
 * Takes or refuses a record on a joint, and says what the card becomes. A torque with a tool past its calibration is taken as
 * information and leaves the step open. A joint is never accepted by a person who did one of its steps.
 */
export function decideJoint(
  site: JointSite,
  record: NewRecord<JointBody | WithdrawnBody>,
  actor: Actor,
): Decision<JointCard> {
  const standing = { now: site.now, version: site.version, records: site.card.records };
  const fault = guardRecord(record, standing) ?? bodyFault(site, record, actor);
  if (fault !== null) return refused(fault);
  const { card } = site;
  const after = jointCard(card.sheet, [...card.records, entered(record, actor, site.now)], card.timeZone);
  const kept = after.uncredited.find(({ stamp }) => stamp.recordId === record.id);
  return kept === undefined ? credited(after, after.remarks) : informationOnly(after, kept.remarks);
}

function bodyFault(site: JointSite, record: NewRecord<JointBody | WithdrawnBody>, actor: Actor): JointFault {
  const { body } = record;
  const replaces = record.supersedes?.id ?? null;
  switch (body.kind) {
    case 'joint-step':
      return neighboursFault(site.neighbours) ?? stepFaultOf(site, replaces, body, actor);
    case 'joint-accepted':
      return neighboursFault(site.neighbours) ?? acceptanceFault(site.card, body.differencesRead, replaces, actor);
    case 'joint-reopened':
      return replaces === null ? reopeningFault(site.card) : null;
    case 'record-withdrawn':
      return null;
  }
}

type JointFault = JointRefusal | Extract<PieceRefusal, { readonly code: 'piece.quarantined' }> | null;

function neighboursFault(neighbours: readonly Neighbour[]): JointFault {
  const [first] = neighbours;
  if (first === undefined) return { code: 'joint.no-neighbour', args: {} };
  const quarantined = neighbours.find(({ state }) => state === 'quarantined');
  if (quarantined)
    return { code: 'piece.quarantined', args: { mark: quarantined.mark, reason: quarantined.quarantineReason } };
  const loose = neighbours.find(({ state }) => !isHung(state));
  return loose ? { code: 'joint.neighbour-not-hung', args: { mark: loose.mark, state: loose.state } } : null;
}

/** A correction is judged against the card as it stood without the record that it replaces. */
function stepFaultOf({ card }: JointSite, replaces: string | null, body: StepBody, actor: Actor): JointRefusal | null {
  const done = card.steps.map((step) => (step.done !== null && step.done.recordId !== replaces ? step.done : null));
  return stepFault(card.sheet, done, body, actor);
}

function acceptanceFault(
  card: JointCard,
  differencesRead: boolean,
  replaces: string | null,
  actor: Actor,
): JointRefusal | null {
  if (card.sheet.steps === null) return { code: 'joint.no-step-list', args: {} };
  if (card.accepted !== null && card.accepted.recordId !== replaces)
    return { code: 'joint.accepted-already', args: { by: card.accepted.by.name, at: card.accepted.at } };
  const open = card.steps.filter((step) => step.done === null);
  if (card.next !== null)
    return {
      code: 'joint.not-closed',
      args: { next: card.next.index + 1, nextText: card.next.text, open: open.length },
    };
  return ownWorkFault(card, actor) ?? torqueFault(card, differencesRead);
}

function ownWorkFault(card: JointCard, actor: Actor): JointRefusal | null {
  const own = card.installers.some(({ id }) => id === actor.id);
  return own ? { code: 'joint.own-work', args: { name: actor.name } } : null;
}

/** An unknown limit blocks a pass; a difference that no tolerance judges waits for a person who says to have read it. */
function torqueFault(card: JointCard, differencesRead: boolean): JointRefusal | null {
  const unjudged = card.steps.flatMap(({ index, kind, done }) =>
    done?.torque?.verdict === 'unjudged' && kind === 'torque' ? [{ step: index + 1, ...done.torque }] : [],
  );
  const unknown = unjudged.find(({ statedNm }) => statedNm === null);
  if (unknown) return { code: 'joint.torque-unknown', args: { step: unknown.step, appliedNm: unknown.appliedNm } };
  const statedNm = unjudged[0]?.statedNm ?? null;
  if (statedNm === null || differencesRead) return null;
  const differences = unjudged.map(({ step, appliedNm }) => ({ step, appliedNm }));
  return { code: 'joint.torque-difference-unread', args: { statedNm, differences } };
}

function reopeningFault(card: JointCard): JointRefusal | null {
  return card.steps.some((step) => step.done !== null) ? null : { code: 'joint.nothing-to-reopen', args: {} };
}
