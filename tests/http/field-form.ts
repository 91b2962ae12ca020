import { fieldsOf } from '../support/page.ts';

/** One form of a page as a browser would send it untouched: its address and its fields. */
export interface PageForm {
  readonly action: string;
  readonly fields: Readonly<Record<string, string>>;
}

/** The form of a page that does this, as its hidden field says. */
export function formThat(does: string, html: string): PageForm {
  const forms = [...html.matchAll(/<form\b[^>]*>[\s\S]*?<\/form>/g)].map(([form]) => form);
  const found = forms.find((form) => form.includes(`name="do" value="${does}"`));
  if (found === undefined) throw new Error(`the page has no form that does "${does}"`);
  return { action: /\saction="([^"]*)"/.exec(found)?.[1]?.replaceAll('&amp;', '&') ?? '', fields: fieldsOf(found) };
}

type Typed = Readonly<Record<string, string | readonly string[] | undefined>>;

/** The form with what a person typed and ticked, as the body of a post. */
export function typedInto({ fields }: PageForm, typed: Typed): string {
  const body = new URLSearchParams();
  for (const [name, value] of Object.entries({ ...fields, ...typed }))
    for (const one of value === undefined ? [] : [value].flat()) body.append(name, one);
  return body.toString();
}

/** What stands beside the fields of a form that was not taken. */
export function besideFields(html: string): string {
  return [...html.matchAll(/<div class="fault"[^>]*>([\s\S]*?)<\/div>/g)]
    .map(([, words]) =>
      words
        ?.replace(/<svg[\s\S]*?<\/svg>/g, '')
        .replace(/\s+/g, ' ')
        .trim(),
    )
    .join(' | ')
    .replaceAll('&#39;', "'")
    .replaceAll('&quot;', '"');
}
