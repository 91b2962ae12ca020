import { canonicalJson } from '../canonical-json.ts';
import type { RunLayout } from '../layout/result.ts';
import type { Run } from '../model.ts';
import type { Fact, FactDifference, FactValue } from './difference.ts';

interface Told {
  readonly run: Run;
  readonly layout: Pick<RunLayout, 'facing'>;
}

const FACTS: Readonly<Record<Fact, (told: Told) => FactValue>> = {
  place: ({ run }) => ({ kind: 'place', ...run.start }),
  heading: ({ run }) => ({ kind: 'heading', degrees: run.headingDeg }),
  facing: ({ layout }) => ({ kind: 'heading', degrees: layout.facing[0]?.compassDeg ?? null }),
  level: ({ run }) => ({ kind: 'word', word: run.level }),
  area: ({ run }) => ({ kind: 'word', word: run.area }),
  side: ({ run }) => ({ kind: 'word', word: run.side }),
  supply: ({ run }) => ({ kind: 'word', word: run.feed.supply }),
  device: ({ run }) => ({ kind: 'amperes', amperes: run.feed.deviceA }),
  'rod-length': ({ run }) => ({ kind: 'length', length: run.drop }),
  rod: ({ run }) => ({ kind: 'word', word: run.rod }),
  attachment: ({ run }) => ({ kind: 'word', word: run.attachment }),
  capacity: ({ run }) => ({ kind: 'weight', kg: run.supportCapacityKg }),
  crossings: ({ run }) => ({ kind: 'crossings', crossings: run.crossings }),
};

/** What a run says of itself as a whole and says otherwise in the next revision, in one order. */
export function compareFacts(before: Told, after: Told): FactDifference[] {
  return (Object.keys(FACTS) as Fact[]).flatMap((fact) => {
    const [was, is] = [FACTS[fact](before), FACTS[fact](after)];
    return canonicalJson(was) === canonicalJson(is) ? [] : [{ fact, before: was, after: is }];
  });
}
