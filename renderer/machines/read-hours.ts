/** What was typed for the hour meter, as a number or as words that ask for one. */
export type HoursRead =
  | { readonly kind: 'blank' }
  | { readonly kind: 'hours'; readonly hours: number }
  | { readonly kind: 'unclear'; readonly why: string };

const mostHours = 200_000;

/**
 * Reads an hour meter as people write it: `6260`, `6 260 h`, `6,260`, `6260.4`.
 *
 * A comma or point with three digits after it groups thousands; with one or two digits it is the decimal.
 */
export function readHours(typed: string): HoursRead {
  const text = typed.replace(/(hours?|hrs?|h)\.?\s*$/i, '').replace(/[\s\u2009\u202f\u00a0'\u2019]/g, '');
  if (text === '') return { kind: 'blank' };
  const grouped = /^\d{1,3}([.,])\d{3}(?:\1\d{3})*$/.test(text);
  const plain = grouped ? text.replace(/[.,]/g, '') : text.replace(',', '.');
  if (!/^\d+(\.\d{1,2})?$/.test(plain)) return { kind: 'unclear', why: 'Not one number.' };
  const hours = Number(plain);
  if (hours > mostHours) return { kind: 'unclear', why: 'No machine has run that long.' };
  return { kind: 'hours', hours };
}
