import { TagPlate } from '../../../../renderer/stage/shapes/tag/TagPlate.tsx';
import { stateWords } from '../../../../renderer/stage/words.ts';
import { findingStates } from '../../../../shared-lib/model/finding.ts';

const tiers = [0, 1, 2, 3, 4] as const;

/** Every weight and state of the stamped tag, for looking. */
export function TagPage() {
  return (
    <div className="tags">
      {tiers.map((tier) => (
        <section key={tier}>
          <h2>{tier}</h2>
          {findingStates.map((state) => (
            <p key={state}>
              <TagPlate number={3} tier={tier} state={state} height={38} />
              <TagPlate number={14} tier={tier} state={state} />
              {stateWords[state]}
            </p>
          ))}
        </section>
      ))}
    </div>
  );
}
