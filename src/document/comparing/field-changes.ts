import { formatPath, type PathPart } from '../fault.ts';

/** A value that differs; undefined where one side does not have it. */
export interface FieldChange {
  /** Within the thing, as in `legs[0].lengthMm`. */
  readonly path: string;
  readonly before: unknown;
  readonly after: unknown;
}

/** The values of plain data that differ, each at its deepest path, in the order of `before`. */
export function fieldChanges(before: unknown, after: unknown, path: readonly PathPart[] = []): FieldChange[] {
  if (isList(before) && isList(after)) {
    const length = Math.max(before.length, after.length);
    const places = Array.from({ length }, (_, i) => i);
    return places.flatMap((i) => fieldChanges(before[i], after[i], [...path, i]));
  }
  if (isObject(before) && isObject(after)) {
    const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
    return keys.flatMap((key) => fieldChanges(propertyOf(before, key), propertyOf(after, key), [...path, key]));
  }
  return Object.is(before, after) ? [] : [{ path: formatPath(path), before, after }];
}

function isList(value: unknown): value is readonly unknown[] {
  return Array.isArray(value);
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function propertyOf(thing: object, key: string): unknown {
  return Object.hasOwn(thing, key) ? Reflect.get(thing, key) : undefined;
}
