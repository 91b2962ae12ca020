/** A copy of `value` with the part at `path` (as faults write it, `runs[0].id`) replaced; undefined takes it out. */
export function changed(value: unknown, path: string, part: unknown): unknown {
  const copy = structuredClone(value);
  const keys = path.split(/[.[\]]+/).filter(Boolean);
  const last = keys.pop();
  const parent = keys.reduce<unknown>((at, key) => Reflect.get(Object(at), key), copy);
  if (last === undefined) return part;
  if (part === undefined) Reflect.deleteProperty(Object(parent), last);
  else Reflect.set(Object(parent), last, part);
  return copy;
}
