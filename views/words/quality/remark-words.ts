import type { Remark, SupportLimit } from '../../../src/domain/quality/remark.ts';
import { counted, degrees, long, quoted, time, torque } from './figures.ts';
import { ruleWord } from './insulation-words.ts';
import type { WordsFor } from './told.ts';

const LIMITS: Readonly<Record<SupportLimit, string>> = {
  spacing: 'the greatest spacing',
  'end-overhang': 'the greatest end overhang',
  'joint-clearance': 'the clearance from a joint',
  'fitting-distance': 'the distance from a fitting',
  'crossing-clearance': 'the clearance from a wall or floor',
};

export const REMARK_WORDS: WordsFor<Remark> = {
  'tool.calibration-expired': ({ id, due, day, daysOver }) => ({
    what: `${id} was out of calibration: kept as information only, nothing is credited.`,
    number: `due ${due}, used ${day}, ${counted(daysOver, 'day', 'days')} over`,
    remedy:
      'Do it again with a tool in calibration. What else this tool touched since it was last good has to be looked at.',
  }),
  'tool.calibration-unknown': ({ id }) => ({
    what: `The calibration of ${id} is not known: kept as information only, nothing is proved.`,
    number: null,
    remedy: "Enter the last day of the instrument's calibration, or test with another.",
  }),
  'sheet.no-hold': () => ({
    what: 'The sheet names no hold point at which the seating is seen, so this card cannot ask for it.',
    number: null,
    remedy:
      "The office compares the steps with the maker's sheet and marks the step where every pole is seen with HOLD:.",
  }),
  'sheet.hold-from-words': ({ step, text }) => ({
    what: `No step is marked as the hold point; step ${step} is taken for it by its words: ${quoted(text)}.`,
    number: null,
    remedy: 'The office marks the right step with HOLD:.',
  }),
  'sheet.torque-without-step': ({ torqueNm }) => ({
    what: 'The sheet states a torque and no step asks for it.',
    number: torque(torqueNm),
    remedy: 'The office marks the step that tightens the bolt with TORQUE:.',
  }),
  'torque.differs': ({ step, appliedNm, statedNm, differencePercent }) => ({
    what: `The torque of step ${step} differs from the sheet's, which states no tolerance.`,
    number: `${torque(appliedNm)} against ${torque(statedNm)}: ${differencePercent > 0 ? '+' : '−'}${Math.abs(differencePercent).toFixed(1)} %`,
    remedy: 'The person who accepts the joint reads it and decides.',
  }),
  'torque.no-stated-value': ({ step, appliedNm }) => ({
    what: `The torque of step ${step} cannot be judged: the sheet states none.`,
    number: torque(appliedNm),
    remedy: "The office enters the torque of the maker's sheet; until then the joint cannot be accepted.",
  }),
  'step.sheet-changed': ({ step, shown }) => ({
    what: `Step ${step} was recorded by other words than the sheet has now, and does not count for it.`,
    number: quoted(shown),
    remedy: 'Do the step as the sheet has it now, and record it.',
  }),
  'piece.release-awaits': ({ role }) => ({
    what: `The release still needs the ${role}'s signature.`,
    number: null,
    remedy: 'Until then the piece stays in quarantine.',
  }),
  'support.limit-unknown': ({ limit }) => ({
    what: `The sheet does not state ${LIMITS[limit]}, so it was not judged.`,
    number: null,
    remedy: 'The office enters it from the sheet, with its source.',
  }),
  'support.load-not-reworked': ({ moved }, say) => ({
    what: 'The hanger stands elsewhere than planned; the loads of the run were not worked again.',
    number: `${long(Math.abs(moved), say)} ${moved < 0 ? 'towards' : 'away from'} the feed`,
    remedy: 'The office looks at the loads when many hangers of the run have moved.',
  }),
  'drop.limit-not-judged': () => ({
    what: 'The code basis of this job prints no distance to the first support of a drop.',
    number: null,
    remedy: "The maker's sheet and the local code decide.",
  }),
  'insulation.dew-point-unknown': () => ({
    what: 'Air temperature or humidity is missing, so the dew point is not known.',
    number: null,
    remedy: 'Measure both where the housing may be colder than the air.',
  }),
  'insulation.surface-near-dew-point': ({ surfaceTempC, dewPointC, leastC }) => ({
    what: 'Hold: the surface is too near the dew point. The readings are kept as information only.',
    number: `surface ${degrees(surfaceTempC)}, dew point ${degrees(dewPointC)}; at least ${degrees(leastC)}`,
    remedy: 'Warm and dry the room, wait, and test again.',
  }),
  'insulation.temperature-missing': () => ({
    what: 'The surface temperature is missing, so the readings cannot be brought to 20 °C and prove nothing.',
    number: null,
    remedy: 'Measure the temperature of the housing and correct the record.',
  }),
  'insulation.locks-rule': ({ rule }) => ({
    what: `This first test locks the rule of the job: ${ruleWord(rule)}.`,
    number: null,
    remedy: 'All later tests are judged by it.',
  }),
  'test.stale': ({ testAt, workAt }, say) => ({
    what: 'Work was done after the test in what it covers, so the test counts no longer.',
    number: `tested ${time(testAt, say)}, work ${time(workAt, say)}`,
    remedy: 'Test again.',
  }),
};
