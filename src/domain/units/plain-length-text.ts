const FRACTIONS: Readonly<Record<string, string>> = {
  '¼': '1/4',
  '½': '1/2',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
};

/**
 * A length as people and spreadsheets write it, brought to one spelling: `12 ft 6 1/2 in`, with plain digits, a point
 * for the decimal mark and no grouping. `plainLengthText('12′–6½″') = '12 ft -6 1/2 in'`.
 */
export function plainLengthText(text: string): string {
  const marks = text
    .normalize('NFC')
    .replace(/[¼½¾⅛⅜⅝⅞⅓⅔]/g, (sign) => ` ${FRACTIONS[sign]} `)
    .replace(/\u2044/g, '/')
    .replace(/[\u2212\u2010-\u2015]/g, '-')
    .replace(/[\u2032\u2018\u2019\u00b4`]/g, "'")
    .replace(/[\u2033\u201c\u201d]|''/g, '"')
    .toLowerCase();
  const words = marks
    .replace(/'/g, ' ft ')
    .replace(/"/g, ' in ')
    .replace(/(?<![a-z])(?:feet|foot|ft\.?)(?![a-z])/g, ' ft ')
    .replace(/(?<![a-z])(?:inches|inch|in\.?)(?![a-z])/g, ' in ')
    .replace(/(?<![a-z])(?:millimet(?:er|re)s?)(?![a-z])/g, ' mm ')
    .replace(/(?<![a-z])(?:centimet(?:er|re)s?)(?![a-z])/g, ' cm ')
    .replace(/(?<![a-z])(?:met(?:er|re)s?)(?![a-z])/g, ' m ');
  return plainNumber(words.replace(/\s+/g, ' ').trim());
}

const GROUPED = /^([+-]? ?)(\d{1,3}(?:,\d{3})+)(?!\d|,)/;
const SPACED = /^([+-]? ?)(\d{1,3}(?: \d{3})+)(?= mm$|mm$)/;
const DECIMAL_COMMA = /^([+-]? ?\d+),(\d+)(?= |$|[a-z])/;

function plainNumber(text: string): string {
  if (GROUPED.test(text))
    return text.replace(GROUPED, (_, sign: string, digits: string) => sign + digits.replaceAll(',', ''));
  if (SPACED.test(text))
    return text.replace(SPACED, (_, sign: string, digits: string) => sign + digits.replaceAll(' ', ''));
  return text.replace(DECIMAL_COMMA, '$1.$2');
}
