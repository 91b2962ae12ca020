import { describe, expect, it } from 'vitest';
import { contextFor } from '../../../src/domain/layout/context-for.ts';
import { judgeJoint } from '../../../src/domain/layout/judge-joint.ts';
import { judgeSupports } from '../../../src/domain/layout/judge-supports.ts';
import { aJob, aTap, feet } from '../../support/job.ts';
import { laidOut, layoutType, lRun, messages, rulesOf, standardRun, straightRun } from './l-run.ts';

// The numbers are those of the job map's list of bad entries and what a tool should say to each.
describe('what is said of a bad entry', () => {
  it('4: a spacing of 10 ft needs its source', () => {
    const type = layoutType();
    const layout = laidOut(straightRun(70), { ...type, support: { ...type.support, source: null } });
    expect(messages(layout, 'support.source')).toEqual([
      `A hanger spacing of 10'-0" is over 5'-0", which needs the busway's marked spacing: enter the sheet and revision that state it.`,
    ]);
  });

  it('5: a blocked zone of 10.5 ft is wider than the spacing', () => {
    const run = straightRun(80, { noSupport: [{ from: feet(41), to: feet(51.5), reason: 'duct' }] });
    const layout = laidOut(run);
    expect(messages(layout, 'support.blocked')).toEqual([
      `No legal hanger between 41'-0" and 51'-6": 10'-6" is more than the 10'-0" that the spacing allows (blocked by duct 41'-0" to 51'-6"). ` +
        `Bridge it with a trapeze or strut from 41'-0" to 51'-6" that carries a hanger in between, or reroute the run or what blocks it.`,
    ]);
    expect(layout.ok).toBe(true);
    expect(layout.supports).toEqual([]);
    expect(layout.joints).toHaveLength(4);
  });

  it('5: a zone exactly as wide as the spacing can be passed', () => {
    const run = straightRun(80, { noSupport: [{ from: feet(41.5), to: feet(51.5), reason: 'duct' }] });
    expect(rulesOf(laidOut(run))).not.toContain('support.blocked');
  });

  it('6: a hanger 4 in from a joint', () => {
    const run = straightRun(70);
    const context = contextFor(aJob({ types: [layoutType()], runs: [run] }), run);
    const layout = laidOut(run);
    const found = judgeSupports(run, context, layout, [
      feet(2),
      feet(11),
      feet(20 - 1 / 3),
      feet(29),
      feet(38.5),
      feet(48),
      feet(58),
      feet(68),
    ]);
    expect(found.map((finding) => [finding.rule, finding.message])).toEqual([
      [
        'support.joint-clear',
        `A hanger at 19'-8" is 4" from the joint at 20'-0" and needs 1'-0". Legal: up to 19'-0" or from 21'-0".`,
      ],
    ]);
  });

  it('6: hangers as set that are too far apart, and an end left hanging', () => {
    const run = straightRun(30);
    const context = contextFor(aJob({ types: [layoutType()], runs: [run] }), run);
    const found = judgeSupports(run, context, laidOut(run), [feet(2), feet(14), feet(23.5)]);
    expect(found.map((finding) => finding.message)).toEqual([
      `Hangers at 2'-0" and 14'-0" are 12'-0" apart and may be 10'-0": set another between 4'-0" and 12'-0".`,
      `No hanger from 28'-0" to 30'-0", where the greatest end overhang asks for one: set one there.`,
    ]);
  });

  it('7: a joint that is wanted inside the clearance of a wall', () => {
    const run = lRun();
    const context = contextFor(aJob({ types: [layoutType()], runs: [run] }), run);
    expect(judgeJoint(run, context, laidOut(run), feet(40)).map((finding) => finding.message)).toEqual([
      `Joint at 40'-0" is within 36'-6" to 41'-6", which the fire-wall at 39'-0" keeps free of joints. Try 20'-0" / 10'-0" / 20'-0" / 10'-0" from 0".`,
    ]);
    expect(judgeJoint(run, context, laidOut(run), feet(41.5))).toEqual([]);
  });

  it('7: an elbow whose face falls into a wall cannot be joined there', () => {
    const run = lRun({ crossings: [{ at: feet(61.5), thickness: feet(1), kind: 'wall', fireRatingMin: 0 }] });
    const layout = laidOut(run);
    expect(layout.ok).toBe(false);
    expect(messages(layout, 'joint.in-crossing')).toEqual([
      `The joint of the elbow at 60'-0" is within 59'-0" to 64'-0", which the wall at 61'-6" keeps free of joints, and it cannot be moved by other sections: ` +
        `shift the run or the elbow so that the joint comes to 59'-0" (1'-0" back) or to 64'-0" (4'-0" on).`,
      `The joint of the elbow at 62'-0" is within 59'-0" to 64'-0", which the wall at 61'-6" keeps free of joints, and it cannot be moved by other sections: ` +
        `shift the run or the elbow so that the joint comes to 59'-0" (3'-0" back) or to 64'-0" (2'-0" on).`,
    ]);
  });

  it('8: 61 ft cannot be made up from 5, 10 and 20 ft', () => {
    const layout = laidOut(straightRun(61));
    expect(layout.ok).toBe(false);
    expect(messages(layout, 'section.no-cover')).toEqual([
      `The straight part from 0" to 61'-0" (61'-0" long) cannot be covered: 60'-0" is reachable with stock of 20'-0", 10'-0" and 5'-0", ` +
        `61'-0" is not, 1'-0" short of stock. Shift the feed 1'-0" along the heading (60'-0" left to cover) or 4'-0" against it ` +
        `(65'-0"), or shorten the part by 1'-0" to 60'-0" or lengthen it by 4'-0" to 65'-0", ` +
        `or have a factory cut of 11'-0" allowed (the sheet states none).`,
    ]);
  });

  it('8: a fixed tap that bars every covering is named with the least move that frees one', () => {
    const type = layoutType({ stockLengths: [feet(20)] });
    const run = straightRun(40, { taps: [aTap({ id: 'T7', fixed: true, place: { at: feet(19.5) } })] });
    const message = messages(laidOut(run, type), 'section.no-cover')[0];
    expect(message).toContain(`tap T7 (fixed) at 19'-6" keeps joints out of 18'-3" to 20'-9"`);
    expect(message).toContain(`Move tap T7 (fixed) by 9" to 18'-9"`);
    const moved = straightRun(40, { taps: [aTap({ id: 'T7', fixed: true, place: { at: feet(18.75) } })] });
    expect(laidOut(moved, type).ok).toBe(true);
  });

  it('8: an end that no sections reach says what it may lie between', () => {
    const run = straightRun(61, { end: { reach: feet(61), hardStop: feet(64) } });
    const message = messages(laidOut(run), 'section.no-cover')[0];
    expect(message).toContain(`to end anywhere in 61'-0" to 64'-0"`);
    expect(message).toContain(`lengthen it by 4'-0" to 65'-0"`);
  });

  it('11: taps that face the wrong way say which leg, and which elbows a flip would change', () => {
    const [first, second] = lRun().legs;
    const layout = laidOut(lRun({ legs: [{ ...first!, tapsMustFace: 'right' }, second!] }));
    expect(messages(layout, 'tap.facing')).toEqual([
      'The conductors lie on the left, so taps cannot face the right as they must: leg 1 heads east, taps face north. ' +
        `Putting the conductors on the right turns the taps round, and changes the elbow at 61'-0" from inside to outside: other parts to order.`,
    ]);
    expect(layout.ok).toBe(true);
  });

  it('12: taps of the 70 ft run that land on joints, with the nearest legal places', () => {
    const layout = laidOut(standardRun());
    expect(messages(layout, 'tap.joint-clear')).toEqual([
      `Tap T6 at 19'-3": it is 9" from joint 2 at 20'-0" and needs 1'-3". Nearest legal places: 18'-9" (6" back) or 21'-3" (2'-0" on).`,
      `Tap T12 at 40'-3": it is 3" from joint 3 at 40'-0" and needs 1'-3". Nearest legal places: 38'-9" (1'-6" back) or 41'-3" (1'-0" on).`,
    ]);
    const moved = layout.taps.filter((tap) => tap.nearestLegal !== null);
    expect(moved.map((tap) => [tap.id, tap.nearestLegal])).toEqual([
      ['T6', feet(18.75)],
      ['T12', feet(41.25)],
    ]);
  });

  it('13: boxes that overlap', () => {
    const taps = [aTap({ id: 'T7', place: { at: feet(5) } }), aTap({ id: 'T8', place: { at: feet(5 + 10 / 12) } })];
    expect(messages(laidOut(straightRun(20, { taps })), 'tap.spacing')).toEqual([
      `Tap T8 at 5'-10": its box overlaps that of tap T7 at 5'-0" by 2". Nearest legal places: 4'-0" (1'-10" back) or 6'-0" (2" on).`,
    ]);
  });
});
