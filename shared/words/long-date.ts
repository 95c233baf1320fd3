/** The format of the latest locale is kept, since a book has one: making it takes 300 µs, using it 4. */
let kept: { readonly locale: string; readonly format: Intl.DateTimeFormat } | null = null;

/** `Tuesday, 15 September 2026`, of `2026-09-15`, as `locale` (a BCP 47 tag) writes it. */
export function longDate(date: string, locale: string): string {
  if (kept?.locale !== locale) kept = { locale, format: dayFormat(locale) };
  return kept.format.format(new Date(`${date}T00:00:00Z`));
}

const dayFormat = (locale: string): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat(locale, {
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });

/** `Tuesday, 15 September`, in full or `short`: `Tue, 15 Sept`. */
export const dayName = (date: Date, locale: string, weekday: 'long' | 'short'): string =>
  date.toLocaleDateString(locale, { weekday, day: 'numeric', month: weekday, timeZone: 'UTC' });
