import { z } from 'zod';

/** How lists are cut into pages: the same words on every list. */
export const pageQuerySchema = z.object({
  page: z.coerce.number().int().min(1).default(1),
  limit: z.coerce.number().int().min(1).max(500).default(100),
});
export type PageQuery = z.infer<typeof pageQuerySchema>;

export function listOf<T extends z.ZodType>(item: T) {
  return z.object({ items: z.array(item), total: z.number().int(), page: z.number().int(), limit: z.number().int() });
}

export interface Listed<T> {
  readonly items: T[];
  readonly total: number;
  readonly page: number;
  readonly limit: number;
}

/** `skip` and `take` of a page. */
export function cut({ page, limit }: PageQuery): { skip: number; take: number } {
  return { skip: (page - 1) * limit, take: limit };
}
