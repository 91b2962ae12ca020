import { openEnds } from '../../domain/quality/end-card.ts';
import type { Actor, NewRecord, RecordBody, RecordKind, RunEnd } from '../../domain/quality/record.ts';
import type { QualityRefusal } from '../../domain/quality/refusal.ts';
import type { Reach } from '../reach.ts';
import { rule, type SubjectAt } from '../records/subject-at.ts';
import { neededFor } from '../records/who-may.ts';

/** Something that may be recorded next, and what bars this person from it now. */
export interface Act {
  readonly kind: RecordKind;
  /** Of a joint, from 0. */
  readonly step: number | null;
  /** Of a run. */
  readonly end: RunEnd | null;
  readonly bar: Bar | null;
}

export type Bar = { readonly code: 'capability'; readonly needs: string } | QualityRefusal;

/**
 * What this person may record here now. Each is found by asking the domain about a record that says all is well, so that what
 * is offered is what will be taken; what the person must still see, measure or confirm is asked by the record itself.
 */
export function actsAt(at: SubjectAt, reached: Reach, viewer: { readonly userId: string; readonly name: string }) {
  const actor: Actor = { id: viewer.userId, name: viewer.name, role: reached.role ?? 'office' };
  return trials(at, actor).map((body): Act => {
    return {
      kind: body.kind,
      step: body.kind === 'joint-step' ? body.step : null,
      end: body.kind === 'end-closed' || body.kind === 'end-opened' ? body.end : null,
      bar: barOf(at, reached, actor, body),
    };
  });
}

function barOf(at: SubjectAt, reached: Reach, actor: Actor, body: RecordBody): Bar | null {
  const needed = neededFor(body, null, at.subject === 'joint' ? at.site.card.sheet.steps : null);
  if (!needed.some((capability) => reached.may(capability))) return { code: 'capability', needs: needed.join(' or ') };
  if (body.kind === 'insulation-test') return null;
  const { now } = at.site;
  const { subject } = at;
  const asked: NewRecord = { id: '', subject, subjectId: '', at: now, supersedes: null, seenVersion: null, body };
  const ruling = rule(at, asked, actor);
  return ruling.ok ? null : ruling.refusal;
}

/** Records that say all is well. */
function trials(at: SubjectAt, { role }: Actor): readonly RecordBody[] {
  switch (at.subject) {
    case 'piece':
      return [
        { kind: 'piece-on-site', lot: null },
        { kind: 'piece-hung', conductorSide: at.site.conductorSide, endsConfirmedBy: null },
        { kind: 'piece-quarantined', reason: 'asked' },
        { kind: 'piece-released', as: role === 'office' ? 'office' : 'inspector', reason: 'asked', decision: null },
      ];
    case 'joint':
      return [
        ...stepTrial(at.site.card),
        { kind: 'joint-accepted', differencesRead: true, note: null },
        { kind: 'joint-reopened', reason: 'asked', fromStep: null },
      ];
    case 'support':
      return [
        { kind: 'support-set', measured: null, rodPlumb: true, loadNut: true, lockNut: true, note: null },
        { kind: 'support-accepted', note: null },
      ];
    case 'tap':
      return tapTrials(at);
    case 'run':
      return runTrials(at);
  }
}

type At<Subject> = Extract<SubjectAt, { readonly subject: Subject }>;

function stepTrial({ next, sheet }: At<'joint'>['site']['card']): RecordBody[] {
  if (next === null) return [];
  const poles = sheet.poles.map((pole) => ({ pole, near: true, far: true }));
  const tool = { toolId: 'asked', calibrationDue: '9999-12-31' } as const;
  const torque = next.kind === 'torque' ? { value: sheet.torqueNm ?? 1, unit: 'Nm' as const, ...tool } : null;
  return [{ kind: 'joint-step', step: next.index, text: next.text, poles, torque, lots: null, note: null }];
}

function tapTrials({ site }: At<'tap'>): RecordBody[] {
  const proved = { runIsolated: true, absenceOfVoltageProved: true, provedBy: 'asked', provedAt: site.now } as const;
  return [
    { kind: 'tap-on-site', lot: null },
    {
      kind: 'tap-set',
      isolation: proved,
      device: { off: true, locked: true },
      steps: ['asked'],
      phasesFound: site.phasesPlanned,
      note: null,
    },
    { kind: 'tap-checked', note: null },
    ...(site.drop === null ? [] : [{ kind: 'drop-supported' as const, distance: 0, note: null }]),
  ];
}

function runTrials({ floor }: At<'run'>): RecordBody[] {
  return [
    ...openEnds(floor.run.feed).flatMap((end): RecordBody[] => [
      { kind: 'end-closed', end, capFitted: true, screwSet: true },
      { kind: 'end-opened', end, reason: 'asked' },
    ]),
    { kind: 'slot-closed', note: null },
    { kind: 'slot-opened', reason: 'asked' },
    { kind: 'activity-done', activity: 'label', quantity: null, note: null },
    BLANK_TEST,
  ];
}

/** Only who may test is asked of it. */
const BLANK_TEST: RecordBody = {
  kind: 'insulation-test',
  rule: 'acceptance-1000ft',
  testVoltageV: 0,
  durationS: null,
  instrument: { id: 'asked', calibrationDue: null, topRange: null },
  surfaceTempC: null,
  ambientTempC: null,
  humidityPercent: null,
  lengthTyped: null,
  isolations: [],
  readings: [],
  confirmed: [],
  witness: null,
  note: null,
};
