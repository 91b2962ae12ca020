import { z } from 'zod';
import { bidBoard } from '../../actions/boards/bid-board.ts';
import type { Context } from '../../actions/context.ts';
import { refuse } from '../../actions/refused.ts';
import type { App } from '../app-type.ts';
import { viewerOf } from '../plugins/viewer.ts';
import { problems, projectParams, stamp } from './conventions.ts';

const amount = z.number().int();
const line = z.looseObject({
  line: z.string(),
  label: z.string().nullable().describe('Which of several lines of a name'),
  amount,
  working: z.looseObject({ kind: z.string() }).describe('How the amount came about'),
});

const buildUpSchema = z.looseObject({
  lines: z.array(line).describe('From cost to price; they sum to the price'),
  cost: amount,
  price: amount,
  incomplete: z.array(z.string()).describe('What the price lacks, each with its remedy'),
  packages: z.array(z.looseObject({ name: z.string() })).describe('Quotes of a package, levelled line by line'),
  alternates: z.array(z.looseObject({ lines: z.array(line), amount: amount.nullable() })),
  unitPrices: z.looseObject({ remainder: amount.describe('Of the price, what no unit price holds') }).nullable(),
  checks: z.array(z.looseObject({ rule: z.string(), severity: z.string(), message: z.string() })),
  terms: z.looseObject({ date: z.string().nullable() }),
});

/** The bid as its page shows it. */
export function bidBuildUp(app: App, context: Context): void {
  app.get(
    '/projects/:projectId/bid/build-up',
    {
      schema: {
        tags: ['Bid'],
        summary: 'The price line by line, with quotes levelled, alternates and unit prices',
        description: 'Office only. Amounts in whole minor units; every line says how it came about.',
        params: projectParams,
        response: { 200: buildUpSchema, ...problems },
      },
    },
    async (request, reply) => {
      const { bid, heading } = await bidBoard(context, viewerOf(request), request.params.projectId);
      if (bid === null) return refuse({ code: 'not-found', what: 'bid' });
      stamp(reply, heading.designVersion);
      return reply
        .type('application/json')
        .serializer(JSON.stringify)
        .send(bid as never);
    },
  );
}
