import type { TakeoffLine } from '../takeoff/result.ts';
import { type SummedLine, sumTakeoff } from '../takeoff/sum-takeoff.ts';

/** One thing of the takeoff in two ways of doing a job; 0 where one of them needs none. */
export interface ThingBeside {
  readonly thing: Pick<SummedLine, 'item' | 'kind' | 'hand' | 'length' | 'type' | 'unit'>;
  readonly before: number;
  readonly after: number;
}

/** The things of the whole job that differ in number. Equal takeoffs differ in nothing. */
export function thingsBeside(before: readonly TakeoffLine[], after: readonly TakeoffLine[]): readonly ThingBeside[] {
  const was = byThing(before);
  const is = byThing(after);
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((key) => {
    const [old, now] = [was.get(key), is.get(key)];
    const { item, kind, hand, length, type, unit } = (now ?? old)!;
    const [a, b] = [old?.quantity ?? 0, now?.quantity ?? 0];
    return Math.abs(a - b) < 1e-9 ? [] : [{ thing: { item, kind, hand, length, type, unit }, before: a, after: b }];
  });
}

function byThing(lines: readonly TakeoffLine[]): ReadonlyMap<string, SummedLine> {
  return new Map(
    sumTakeoff(lines, 'job').map((line) => [
      JSON.stringify([line.item, line.kind, line.hand, line.length, line.type, line.unit]),
      line,
    ]),
  );
}
