import { keyOf } from '../app/commands.ts';
import { go } from '../app/place.ts';
import { BlankPlate } from '../ui/BlankPlate.tsx';
import { Button } from '../ui/Button.tsx';
import { EmptyPlace } from '../ui/EmptyPlace.tsx';
import styles from './FloorPlace.module.css';

/** What belongs here, and the first step. */
export function EmptyFloor() {
  return (
    <div className={styles.empty}>
      <EmptyPlace
        title="The floor is empty"
        drawing={<BlankPlate />}
        actions={
          <Button look="primary" keyCap={keyOf('floor.takeIn')} onPress={() => go({ name: 'take-in' })}>
            Take in a machine
          </Button>
        }
      >
        <p>
          Machines stand here from the day they come in until they leave, each with its plate, its hours and what is
          still owed on it.
        </p>
        <p>Start with the plate: the kind of machine is enough.</p>
      </EmptyPlace>
    </div>
  );
}
