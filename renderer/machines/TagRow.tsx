import type { StandingTag } from '../../shared-lib/contract/standing.ts';
import { tierWords } from '../../shared-lib/judgement/tiers.ts';
import { TagPlate } from '../stage/shapes/tag/TagPlate.tsx';
import styles from './TagRow.module.css';

interface TagRowProps {
  readonly tags: readonly StandingTag[];
}

const stateWords = {
  confirmed: '',
  suspected: ', suspected',
  'not-examined': ', not examined',
  'none-found': ', none found',
} as const;

/** The findings' stamped tags in the order of the standing. */
export function TagRow({ tags }: TagRowProps) {
  return (
    <ul className={styles.tags} aria-label="Findings">
      {tags.map(({ findingId, number, tier, state }) => (
        <li key={findingId}>
          <TagPlate
            number={number}
            tier={tier}
            state={state}
            label={`Finding ${number}: ${tierWords(tier).words}${stateWords[state]}`}
          />
        </li>
      ))}
    </ul>
  );
}
