import type { ChoiceView } from '../contract/choices.ts';

const tierNumbers = [0, 1, 2, 3, 4] as const;

/** What leaves most stands first, tier by tier from the worst; then as they were written. */
export function inOrderOfWhatStays(choices: readonly ChoiceView[]): ChoiceView[] {
  const leftIn = ({ left }: ChoiceView, tier: number) => left.filter((line) => line.tier === tier).length;
  return choices.toSorted((a, b) => {
    for (const tier of tierNumbers) {
      const difference = leftIn(b, tier) - leftIn(a, tier);
      if (difference !== 0) return difference;
    }
    return 0;
  });
}
