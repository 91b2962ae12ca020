import type { Finding } from '../../domain/finding.ts';

/** Findings that a change brings and those that it takes away, in their order. */
export function findingChanges(
  before: readonly Finding[],
  after: readonly Finding[],
): { readonly appearing: readonly Finding[]; readonly disappearing: readonly Finding[] } {
  return { appearing: without(after, before), disappearing: without(before, after) };
}

/** What stands in the first list and not in the second, each as often as it stands more. */
function without(these: readonly Finding[], those: readonly Finding[]): readonly Finding[] {
  const left = new Map<string, number>();
  for (const finding of those) left.set(keyOf(finding), (left.get(keyOf(finding)) ?? 0) + 1);
  return these.filter((finding) => {
    const count = left.get(keyOf(finding)) ?? 0;
    if (count > 0) left.set(keyOf(finding), count - 1);
    return count === 0;
  });
}

function keyOf({ rule, severity, run, message }: Finding): string {
  return [rule, severity, run, message].join('\n');
}
