import { z } from 'zod';
import { note, text } from '../schema/fields.ts';

export const at = (what: string) => z.iso.datetime({ offset: true }).describe(what);
export const day = (what: string) => z.iso.date().describe(what);
export const ticked = (what: string) => z.boolean().describe(what);
export const optionalText = (what: string) => text(what).nullable().default(null);
export const optionalNote = note('Anything worth telling').nullable().default(null);
export const reason = (what: string) => note(what).min(3);
export const tempC = (what: string) => z.number().min(-90).max(200).describe(what);
