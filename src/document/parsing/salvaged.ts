import type { PathPart } from '../fault.ts';

/** A document of which the parts that have the wrong shape are gone: what is left has the right types. */
export type Salvaged<T> = T extends readonly (infer Item)[]
  ? readonly (Salvaged<Item> | undefined)[]
  : T extends object
    ? { readonly [Key in keyof T]?: Salvaged<T[Key]> }
    : T;

type Container = Record<PathPart, unknown>;

/** What was taken out of which container: a key with a wrong value is not the same as a key that is missing. */
const takenOut = new WeakMap<object, Set<PathPart>>();

/** Whether the document gave this key a value, a wrong one included. */
export function wasGiven<T extends object>(container: T, key: Extract<keyof T, PathPart>): boolean {
  return container[key] !== undefined || (takenOut.get(container)?.has(key) ?? false);
}

/**
 * Takes the values at `paths` out of `input`, so that the rules can still look at everything else and a person
 * sees all faults at once. `input` itself is left alone: only the containers on the way are copied, once each.
 */
export function salvage(input: unknown, paths: readonly (readonly PathPart[])[]): unknown {
  if (paths.some((path) => path.length === 0)) return undefined;
  const copies = new WeakSet<object>();
  const root = isContainer(input) ? copyOnce(input, copies) : input;
  for (const path of paths) removeAt(root, path, copies);
  return root;
}

function removeAt(root: unknown, path: readonly PathPart[], copies: WeakSet<object>): void {
  let at = root;
  for (const part of path.slice(0, -1)) {
    if (!isContainer(at)) return;
    const child = at[part];
    if (!isContainer(child)) return;
    at[part] = copyOnce(child, copies);
    at = at[part];
  }
  const last = path.at(-1);
  if (!isContainer(at) || last === undefined) return;
  at[last] = undefined;
  takenOut.set(at, (takenOut.get(at) ?? new Set()).add(last));
}

function copyOnce(value: Container, copies: WeakSet<object>): Container {
  if (copies.has(value)) return value;
  const copy: unknown = Array.isArray(value) ? [...value] : { ...value };
  if (!isContainer(copy)) return value;
  copies.add(copy);
  return copy;
}

function isContainer(value: unknown): value is Container {
  return typeof value === 'object' && value !== null;
}
