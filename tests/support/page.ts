/** What a person reads on a page: tags gone, entities as signs, blanks drawn together. */
export function readPage(html: string): string {
  return html
    .replace(/<(script|style|svg)\b[\s\S]*?<\/\1>/g, ' ')
    .replace(/<[^>]+>/g, ' ')
    .replace(/&#39;|&apos;/g, "'")
    .replace(/&quot;/g, '"')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&')
    .replace(/\s+/g, ' ')
    .trim();
}

/** The values of a page's hidden and text fields, by name; the first of each name. */
export function fieldsOf(html: string): Record<string, string> {
  const fields: Record<string, string> = {};
  const keep = (name: string | undefined, value: string) => {
    if (name !== undefined && !(name in fields)) fields[name] = decode(value);
  };
  for (const [tag] of html.matchAll(/<input\b[^>]*>/g)) {
    const isTick = /type="(checkbox|radio)"/.test(tag);
    if (isTick && !/\schecked/.test(tag)) continue;
    keep(/\sname="([^"]*)"/.exec(tag)?.[1], /\svalue="([^"]*)"/.exec(tag)?.[1] ?? '');
  }
  for (const [, name, body] of html.matchAll(/<select\b[^>]*\sname="([^"]*)"[^>]*>([\s\S]*?)<\/select>/g)) {
    const chosen =
      /<option\b[^>]*\sselected[^>]*>/.exec(body ?? '')?.[0] ?? /<option\b[^>]*>/.exec(body ?? '')?.[0] ?? '';
    keep(name, /\svalue="([^"]*)"/.exec(chosen)?.[1] ?? '');
  }
  for (const [, name, body] of html.matchAll(/<textarea\b[^>]*\sname="([^"]*)"[^>]*>([\s\S]*?)<\/textarea>/g))
    keep(name, body ?? '');
  return fields;
}

function decode(text: string): string {
  return text
    .replace(/&#39;|&apos;/g, "'")
    .replace(/&quot;/g, '"')
    .replace(/&lt;/g, '<')
    .replace(/&gt;/g, '>')
    .replace(/&amp;/g, '&');
}
