import type { FloorMachine } from '../../shared-lib/contract/machines.ts';
import { useAnswer } from '../api/queries.ts';
import { go, lastPlaceIn } from '../app/place.ts';
import { classNames } from '../ui/class-names.ts';
import { Icon } from '../ui/Icon.tsx';
import { Plate } from '../ui/Plate.tsx';
import painted from '../ui/painted.module.css';
import styles from './FloorPlace.module.css';
import { FoundLine } from './FoundLine.tsx';
import {
  floorHeadline,
  floorOwner,
  kindWords,
  leftAtWords,
  machineName,
  nextStepWords,
  plateHours,
  unfinishedWords,
} from './floor-words.ts';
import { TagRow } from './TagRow.tsx';

interface StandingHereProps {
  /** As they were last touched. */
  readonly machines: readonly FloorMachine[];
}

/** The machines in the shop; the one to go on with is painted. */
export function StandingHere({ machines }: StandingHereProps) {
  const inHand = machines.find(({ visitOpen }) => visitOpen);
  const others = machines.filter((machine) => machine !== inHand);
  return (
    <ul className={styles.machines}>
      {inHand?.visitId != null && <InHand machine={inHand} visitId={inHand.visitId} />}
      {others.map((machine) => (
        <MachineRow key={machine.machine.id} machine={machine} />
      ))}
    </ul>
  );
}

function RowPlate({ machine }: { readonly machine: FloorMachine }) {
  const { kind, serial, bay } = machine.machine;
  return (
    <div className={styles.plateCell}>
      <p className={styles.above}>{bay ?? ''}</p>
      <Plate
        title={kindWords(kind)}
        fields={[
          { label: 'serial', value: serial },
          { label: 'hours', value: plateHours(machine.hours, machine.hoursAreEstimate) },
        ]}
      />
    </div>
  );
}

function InHand({ machine, visitId }: { readonly machine: FloorMachine; readonly visitId: string }) {
  const record = useAnswer('visit.get', { id: visitId }).data;
  const { machine: plate } = machine;
  return (
    <li className={classNames(styles.row, styles.inHand, painted.painted)}>
      <RowPlate machine={machine} />
      <div className={styles.said}>
        <p className={styles.above}>{floorOwner(machine)}</p>
        <button
          type="button"
          className={styles.open}
          data-machine-row=""
          onClick={() => go(lastPlaceIn(visitId))}
          aria-label={`Go on with ${machineName(plate)}`}
        >
          {record === undefined ? floorHeadline(machine) : leftAtWords(record)}
        </button>
        <p className={styles.detail}>{record === undefined ? unfinishedWords(machine) : nextStepWords(record)}</p>
        <FoundLine found={machine.found} />
      </div>
      <span className={styles.goOn} aria-hidden="true">
        Go on
        <Icon name="forward" />
      </span>
      <button
        type="button"
        className={styles.overPlate}
        onClick={() => go({ name: 'machine', machineId: plate.id })}
        aria-label={`${machineName(plate)}: plate, hours and visits`}
      />
    </li>
  );
}

function MachineRow({ machine }: { readonly machine: FloorMachine }) {
  const { machine: plate, complaint, tags } = machine;
  return (
    <li className={styles.row}>
      <RowPlate machine={machine} />
      <div className={styles.said}>
        <p className={styles.above}>{floorOwner(machine)}</p>
        <button
          type="button"
          className={styles.open}
          data-machine-row=""
          onClick={() => go({ name: 'machine', machineId: plate.id })}
          aria-label={`${machineName(plate)}: ${floorHeadline(machine)}`}
        >
          {floorHeadline(machine)}
        </button>
        <p className={styles.detail}>
          {complaint !== '' && <span className={styles.owner}>{`\u201C${complaint}\u201D `}</span>}
          {unfinishedWords(machine)}
        </p>
        <FoundLine found={machine.found} />
        {tags.length > 0 && (
          <div className={styles.tags}>
            <TagRow tags={tags} />
          </div>
        )}
      </div>
    </li>
  );
}
