import type { Finding } from '../finding.ts';
import type { BuswayType, Run } from '../model.ts';
import type { FixedJoint } from './fixed-joints.ts';
import { barAt, freePlaces, type JointBar } from './joint-bars.ts';
import type { Say } from './say.ts';
import { sheetName } from './sheet-name.ts';

/** A stop for each joint that stands barred where a fitting or the feed holds it, with the nearest places that are free. */
export function fixedJointFindings(
  run: Run,
  type: BuswayType,
  joints: readonly FixedJoint[],
  bars: readonly JointBar[],
  say: Say,
): readonly Finding[] {
  return joints.flatMap((joint) => {
    const bar = barAt(bars, joint.at);
    if (bar === null) return [];
    const rule = bar.kind === 'crossing' ? 'joint.in-crossing' : 'section.no-cover';
    const message =
      `The joint of ${joint.owner} at ${say(joint.at)} is within ${say(bar.from)} to ${say(bar.to)}, which ${bar.name} ` +
      `keeps free of joints, and it cannot be moved by other sections: ${remedy(joint, bar, bars, say)}.`;
    return [{ rule, severity: 'stop' as const, run: run.id, at: joint.at, message, source: sheetName(type) }];
  });
}

function remedy(joint: FixedJoint, bar: JointBar, bars: readonly JointBar[], say: Say): string {
  const { below, above } = freePlaces(bars, joint.at);
  const options = [`to ${say(above)} (${say(above - joint.at)} on)`];
  if (below >= 0) options.unshift(`to ${say(below)} (${say(joint.at - below)} back)`);
  const shift = `shift the run or ${joint.owner} so that the joint comes ${options.join(' or ')}`;
  if (bar.tap === null) return shift;
  const away = bar.tap.clear - Math.abs(joint.at - bar.tap.at);
  const to = bar.tap.at < joint.at ? joint.at - bar.tap.clear : joint.at + bar.tap.clear;
  return `move tap ${bar.tap.id} by ${say(away)} to ${say(to)}, or ${shift}`;
}
