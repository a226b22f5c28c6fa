import { useDeferredValue, useMemo, useState } from 'react';
import type { Layout } from '../../shared-lib/model/layout.ts';
import type { OfferedComponent } from '../../shared-lib/parts/children-of.ts';
import { type AssemblyChoice, componentTree, type SystemChoice } from '../../shared-lib/parts/component-tree.ts';
import { findComponents } from '../../shared-lib/parts/find-components.ts';
import { Button } from '../ui/Button.tsx';
import { PickList, type PickOption } from './PickList.tsx';
import styles from './PlacePicker.module.css';

interface PlacePickerProps {
  readonly layout: Layout;
  readonly onPick: (path: string) => void;
  readonly onClose: () => void;
}

/** Where: a word and a number find it at once; or three taps, from the machine's systems down. */
export function PlacePicker({ layout, onPick, onClose }: PlacePickerProps) {
  const [typed, setTyped] = useState('');
  const [system, setSystem] = useState<SystemChoice | null>(null);
  const [assembly, setAssembly] = useState<AssemblyChoice | null>(null);
  const find = useDeferredValue(typed);
  const tree = useMemo(() => componentTree(layout), [layout]);
  const found = useMemo(() => (find.trim() === '' ? [] : findComponents(find, layout)), [find, layout]);

  const pickOption = ({ path, label }: OfferedComponent): PickOption => ({
    key: path,
    words: label,
    onPress: () => onPick(path),
  });
  const options = (): readonly PickOption[] => {
    if (find.trim() !== '') return found.map(pickOption);
    if (system === null) {
      return tree.map((choice) => ({ key: choice.path, words: choice.label, onPress: () => setSystem(choice) }));
    }
    if (assembly === null) {
      const whole: PickOption = {
        key: system.path,
        words: `All of it: ${system.label}`,
        onPress: () => onPick(system.path),
      };
      const parts = system.assemblies.map((choice) => ({
        key: choice.path,
        words: choice.label,
        onPress: () => {
          const [only, ...others] = choice.places;
          if (only !== undefined && others.length === 0) onPick(only.path);
          else setAssembly(choice);
        },
      }));
      return [whole, ...parts];
    }
    return assembly.places.map(pickOption);
  };
  const back = () => {
    if (assembly !== null) setAssembly(null);
    else setSystem(null);
  };
  return (
    <section
      className={styles.picker}
      aria-label="Where"
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        if (typed !== '') setTyped('');
        else if (system !== null) back();
        else onClose();
      }}
    >
      <PickList
        label="Where is it?"
        placeholder="exhaust seat 3, left boom hose"
        typed={typed}
        onType={setTyped}
        maxLength={120}
        autoFocus
        options={options()}
        first={() => findComponents(typed, layout).map(pickOption)[0]}
        none="This machine has no part of that name."
      >
        {system !== null && find.trim() === '' && (
          <Button look="link" onPress={back}>
            {`Back to ${assembly === null ? 'the whole machine' : system.label.toLowerCase()}`}
          </Button>
        )}
      </PickList>
      <Button look="link" onPress={onClose}>
        Leave it
      </Button>
    </section>
  );
}
