import type { Suspicion } from '../choices/records.ts';
import { listed } from '../wording/listed.ts';
import type { NextTest, Reason, Shows } from './next-test.ts';

/** Why it is thought to say something of it. */
function reasonWords({ by, said }: Reason): string {
  switch (by) {
    case 'kind':
      return `said to be: ${said}`;
    case 'words':
      return `its words say: ${said}`;
    case 'complaint':
      return `the owner says: ${said}`;
    case 'place':
      return 'it is taken at this part; of what kind it would be is not said';
  }
}

/** What a test would say of each open suspicion, and why: `may show, and can miss, “left piston leaks” (its words say: leak)`. */
export function whyNext({ shows }: NextTest, suspicions: readonly Suspicion[]): string {
  const named = (of: (each: Shows) => boolean): string[] =>
    shows.filter(of).flatMap(({ suspicionId, because }) => {
      const suspicion = suspicions.find(({ id }) => id === suspicionId);
      if (suspicion === undefined) return [];
      return [`“${suspicion.what}”${because === null ? '' : ` (${reasonWords(because)})`}`];
    });
  const isByPlace = ({ because }: Shows) => because?.by === 'place';
  const parts: readonly [string, string[]][] = [
    ['shows', named(({ power }) => power === 'good')],
    ['may show, and can miss,', named((each) => each.power === 'partial' && !isByPlace(each))],
    ['may say something of', named((each) => each.power === 'partial' && isByPlace(each))],
    ['says nothing of', named(({ power }) => power === 'cannot')],
  ];
  return parts.flatMap(([words, whats]) => (whats.length === 0 ? [] : [`${words} ${listed(whats)}`])).join('; ');
}
