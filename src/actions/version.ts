import { refuse } from './refused.ts';

/** Refuses a write made on an older reading, and hands back what stands there now. */
export function assertVersion(current: { readonly version: number }, expected: number, shown: unknown = current): void {
  if (current.version !== expected) refuse({ code: 'stale', current: shown, version: current.version });
}
