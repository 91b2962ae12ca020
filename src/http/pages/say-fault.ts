import type { Fault } from '../../document/fault.ts';
import type { UnitSystem } from '../../domain/model.ts';
import { formatLength } from '../../domain/units/format-length.ts';
import { fromMm } from '../../domain/units/length.ts';

/**
 * A fault of the document beside its field: there the name of the key says nothing to a person, and lengths stand in the
 * units of the job, where they are known. `atMm is missing. Give atMm: distance of the wall's centre, mm.` is `Nothing is entered here. Give the
 * distance of the wall's centre.`
 */
export function sayFault({ path, message, remedy }: Fault, units: UnitSystem | null): string {
  if (path === 'legs') return 'No leg has a length yet. Give the first leg one.';
  const key = /(\w+)$/.exec(path)?.[1] ?? '';
  const isMissing = message === `${key} is missing.`;
  const isOfTee = message === `A feed of kind tee has no ${key}.`;
  const said = isMissing
    ? 'Nothing is entered here.'
    : isOfTee
      ? 'A tee from another run needs this.'
      : keyless(message, key);
  const words = `${said} ${plainRemedy(remedy, key)}`.trim();
  return units === null ? words : inUnits(words, units);
}

function keyless(message: string, key: string): string {
  return key !== '' && message.startsWith(`${key} is `) ? `This is ${message.slice(key.length + 4)}` : message;
}

function plainRemedy(remedy: string, key: string): string {
  const plain = remedy.replace(/,? in millimetres(?=[;.])/, '');
  const what = plain.startsWith(`Give ${key}: `)
    ? plain.slice(`Give ${key}: `.length).replace(/,(?: in)? mm\./, '.')
    : null;
  if (what === null) return plain;
  const isAbbreviation = /^[A-Z][A-Z/]/.test(what);
  const words = isAbbreviation ? what : `${what.charAt(0).toLowerCase()}${what.slice(1)}`;
  if (NO_NOUN.test(what)) return `Wanted: ${words}`;
  return `Give ${HAS_ARTICLE.test(what) ? '' : 'the '}${words}`;
}

const HAS_ARTICLE = /^(the|a|an|where|left|right|how|whether|what|which|who|why|those) /i;
/** Descriptions that begin so make no sentence with "Give the". */
const NO_NOUN = /^(its|one|for|from|of|above|added|in|only|paid|held|at|fed|east|north|broken|marked|no|and) /i;

/** `30,175.2 mm` in a job of feet is `99'-0"`. */
function inUnits(text: string, units: UnitSystem): string {
  return text.replace(/(?<![\d.,])(\d{1,3}(?:,\d{3})*|\d+)(\.\d+)? mm\b/g, (_, whole: string, rest = '') =>
    formatLength(fromMm(Number(whole.replaceAll(',', '') + rest)), units),
  );
}
