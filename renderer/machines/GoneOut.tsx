import type { FloorMachine } from '../../shared-lib/contract/machines.ts';
import { go } from '../app/place.ts';
import styles from './FloorPlace.module.css';
import { FoundLine } from './FoundLine.tsx';
import { machineName, nameWithHours, owedDetail } from './floor-words.ts';
import { TagRow } from './TagRow.tsx';

interface GoneOutProps {
  readonly machines: readonly FloorMachine[];
}

/** Machines that have left: those with something owed on them first. */
export function GoneOut({ machines }: GoneOutProps) {
  const owed = machines.filter(({ tags }) => tags.length > 0);
  const settled = machines.filter(({ tags }) => tags.length === 0);
  return (
    <aside className={styles.owed} aria-label="Gone out">
      {owed.length > 0 && (
        <>
          <h2>Gone out, something owed</h2>
          <ul className={styles.owedList}>
            {owed.map((machine) => (
              <OwedRow key={machine.machine.id} machine={machine} />
            ))}
          </ul>
        </>
      )}
      {settled.length > 0 && (
        <>
          <h2>Gone out</h2>
          <ul className={styles.owedList}>
            {settled.map((machine) => (
              <OwedRow key={machine.machine.id} machine={machine} />
            ))}
          </ul>
        </>
      )}
    </aside>
  );
}

function OwedRow({ machine }: { readonly machine: FloorMachine }) {
  const [first, ...rest] = machine.tags;
  return (
    <li className={styles.owedRow}>
      <div>{first !== undefined && <TagRow tags={[first]} />}</div>
      <div>
        <button
          type="button"
          className={styles.open}
          data-machine-row=""
          onClick={() => go({ name: 'machine', machineId: machine.machine.id })}
          aria-label={machineName(machine.machine)}
        >
          {nameWithHours(machine)}
        </button>
        <p className={styles.owedText}>{owedDetail(machine)}</p>
        <FoundLine found={machine.found} />
        {rest.length > 0 && (
          <div className={styles.moreTags}>
            <TagRow tags={rest} />
          </div>
        )}
      </div>
    </li>
  );
}
