import type { SupportRefusal } from '../../../src/domain/quality/refusal.ts';
import type { BrokenRule } from '../../../src/domain/quality/support-rules.ts';
import { listed, long, time } from './figures.ts';
import type { Speech, WordsFor } from './told.ts';

export const SUPPORT_WORDS: WordsFor<SupportRefusal> = {
  'support.not-ready': ({ missing }) => ({
    what: 'The hanger is not set as its card asks.',
    number: `missing: ${listed(missing)}`,
    remedy: 'Put that right and record it again.',
  }),
  'support.position': ({ measured, broken, nearest, below, above }, say) => ({
    what: `The hanger cannot stand at ${long(measured, say)}.`,
    number: broken.map((rule) => brokenWords(rule, say)).join('; '),
    remedy: nearestWords(nearest, below, above, say),
  }),
  'support.already-set': ({ by, at }, say) => ({
    what: 'The hanger is set already.',
    number: `by ${by}, ${time(at, say)}`,
    remedy: 'To change what was measured, correct that record with the cause.',
  }),
  'support.not-set': () => ({
    what: 'The hanger is not set yet.',
    number: null,
    remedy: 'It is set and recorded first, then accepted.',
  }),
  'support.accepted-already': ({ by, at }, say) => ({
    what: 'The hanger is accepted already.',
    number: `by ${by}, ${time(at, say)}`,
    remedy: 'Nothing more is needed here.',
  }),
  'support.own-work': ({ name }) => ({
    what: `${name} set this hanger, and this job asks a second person to accept.`,
    number: null,
    remedy: 'Another qualified person accepts it, under their own login.',
  }),
};

function brokenWords({ rule, from, distance, limit, reason }: BrokenRule, say: Speech): string {
  const [is, place, may] = [long(distance, say), long(from, say), long(limit, say)];
  switch (rule) {
    case 'gap-before':
      return `gap to the hanger before, at ${place}, is ${is}; at most ${may}`;
    case 'gap-after':
      return `gap to the next hanger, at ${place}, is ${is}; at most ${may}`;
    case 'past-neighbour':
      return `it is ${is} past the hanger at ${place}`;
    case 'overhang-start':
      return `overhang at the start is ${is}; at most ${may}`;
    case 'overhang-end':
      return `overhang at the end is ${is}; at most ${may}`;
    case 'joint':
      return `it is ${is} from the joint at ${place}; the tool needs ${may}`;
    case 'fitting':
      return `it is ${is} from the fitting's face at ${place}, which has no other hanger; at most ${may}`;
    case 'crossing':
      return `it is ${is} from the wall or floor at ${place}; at least ${may}`;
    case 'no-support':
      return `no hanger may stand there${reason === null ? '' : `: ${reason}`}`;
  }
}

function nearestWords(nearest: number | null, below: number | null, above: number | null, say: Speech): string {
  if (nearest === null)
    return 'No place is left between its neighbours. Ask the office: a trapeze over the obstacle, or a neighbour that moves.';
  if (below === null || above === null)
    return `Move it to ${long(nearest, say)}, the nearest legal place, and measure again.`;
  return `Legal are ${long(below, say)} and ${long(above, say)}; the nearer is ${long(nearest, say)}. Move it and measure again.`;
}
