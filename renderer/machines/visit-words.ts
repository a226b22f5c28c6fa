import type { MachineVisit } from '../../shared-lib/contract/machines.ts';
import { countWords } from '../ui/words.ts';

/** `Slow to crank. 5 findings`. */
export function visitWords({ visit, tags }: MachineVisit): string {
  const said = visit.complaint.trim();
  const ended = said === '' || /[.!?]$/.test(said) ? said : `${said}.`;
  const findings = tags.length === 0 ? 'No finding' : countWords(tags.length, 'finding');
  return `${ended} ${findings}`.trim();
}

/** `1st`, `2nd`, `3rd`, `11th`. */
export function placeWords(place: number): string {
  const tens = Math.floor(place / 10) % 10;
  const ending = tens === 1 ? 'th' : (['th', 'st', 'nd', 'rd'][place % 10] ?? 'th');
  return `${place}${ending}`;
}
