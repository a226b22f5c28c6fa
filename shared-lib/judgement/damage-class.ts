import type { DamageClass } from '../model/finding.ts';

export interface DamageClassWords {
  readonly damageClass: DamageClass;
  /** Short, for a button. */
  readonly label: string;
  /** The loss if it is left, against what the machine is worth. */
  readonly sense: string;
  readonly fromShare: number;
  readonly toShare: number | null;
}

/** What waiting can cost, as a share of the machine's value. The bands are the trade's own; common practice, no source. */
export const damageClasses: readonly DamageClassWords[] = [
  {
    damageClass: 1,
    label: 'Most of the machine',
    sense: 'three quarters of what the machine is worth, or more',
    fromShare: 0.75,
    toShare: null,
  },
  {
    damageClass: 2,
    label: 'A large part of it',
    sense: 'a third to three quarters of what the machine is worth',
    fromShare: 0.3,
    toShare: 0.75,
  },
  {
    damageClass: 3,
    label: 'A real repair',
    sense: 'a twentieth to a third of what the machine is worth',
    fromShare: 0.05,
    toShare: 0.3,
  },
  {
    damageClass: 4,
    label: 'A small repair',
    sense: 'less than a twentieth of what the machine is worth',
    fromShare: 0,
    toShare: 0.05,
  },
];

export function damageClassWords(damageClass: DamageClass): DamageClassWords {
  const found = damageClasses.find((words) => words.damageClass === damageClass);
  if (found === undefined) throw new RangeError(`no damage class ${damageClass}`);
  return found;
}
