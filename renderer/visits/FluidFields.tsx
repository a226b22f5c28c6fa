import { fluidWords, levelWords } from '../../shared-lib/intake/words.ts';
import { type FluidReceived, fluidKinds, fluidLevels } from '../../shared-lib/model/intake.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import selecting from '../ui/select.module.css';
import { TextField } from '../ui/TextField.tsx';
import styles from './IntakePanel.module.css';

interface FluidFieldsProps {
  readonly visitId: string;
  readonly fluids: readonly FluidReceived[];
}

/** Each fluid in a line: its level, how it looked, and what was topped up since. What is not touched is not written. */
export function FluidFields({ visitId, fluids }: FluidFieldsProps) {
  const note = useChange('fluid.note');
  const remove = useChange('fluid.remove');
  const error = note.error ?? remove.error;
  return (
    <div className={styles.fluids}>
      {fluidKinds.map((fluid) => {
        const there = fluids.find((each) => each.fluid === fluid);
        const name = fluidWords[fluid];
        return (
          <div key={fluid} className={styles.fluid} data-noted={there !== undefined || undefined}>
            <label className={selecting.field}>
              <span>{name.charAt(0).toUpperCase() + name.slice(1)}</span>
              <select
                className={selecting.select}
                value={there?.level ?? ''}
                onChange={({ target }) => {
                  const level = fluidLevels.find((each) => each === target.value);
                  if (level !== undefined) note.run({ visitId, fluid, level });
                  else if (there !== undefined) remove.run({ visitId, fluid });
                }}
              >
                <option value="">not written down</option>
                {fluidLevels.map((level) => (
                  <option key={level} value={level}>
                    {levelWords[level]}
                  </option>
                ))}
              </select>
            </label>
            {there !== undefined && (
              <>
                <TextField
                  label={`Look of the ${name}`}
                  placeholder="brown, milky, smells burnt"
                  value={there.look}
                  onCommit={(look) => note.run({ visitId, fluid, look: look.trim() })}
                  maxLength={400}
                />
                <TextField
                  label="Topped up since"
                  placeholder="half a litre a day, yard hose"
                  value={there.added}
                  onCommit={(added) => note.run({ visitId, fluid, added: added.trim() })}
                  maxLength={400}
                />
              </>
            )}
          </div>
        );
      })}
      {error !== null && <ErrorNote {...wordsOf(error)} />}
    </div>
  );
}
