/** Words as they are said one after the other: `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly (string | number)[], last: 'and' | 'or' = 'and'): string {
  const [only = '', ...more] = items;
  if (more.length === 0) return String(only);
  return `${[only, ...more.slice(0, -1)].join(', ')} ${last} ${more.at(-1)}`;
}
