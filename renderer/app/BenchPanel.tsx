import { useId } from 'react';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { Choice } from '../ui/Choice.tsx';
import { ErrorNote } from '../ui/ErrorNote.tsx';
import { Panel } from '../ui/Panel.tsx';
import { useAppState } from './app-state.ts';
import styles from './BenchPanel.module.css';
import { changeBenchSettings, type Size, type Theme, useBenchSettings } from './bench-settings.ts';
import { openPanel } from './panels.ts';
import { go } from './place.ts';

const themeOptions: readonly { value: Theme; words: string; note: string; keyCap: string }[] = [
  { value: 'bench', words: 'Bench', note: 'warm paper, for the shop', keyCap: 'B' },
  { value: 'sunlight', words: 'Sunlight', note: 'black on white, for the yard', keyCap: 'S' },
  { value: 'night', words: 'Night', note: 'dark, for the pit', keyCap: 'D' },
];

const sizeOptions: readonly { value: Size; words: string; note: string }[] = [
  { value: 'desk', words: 'Desk size', note: 'more on one screen' },
  { value: 'bench', words: 'Bench size', note: 'larger letters, targets of 15 mm' },
];

/** Length of the bar that is held against a rule. */
const barMm = 50;
const guessedPixelsPerMm = 96 / 25.4;

/** Who works here, in what light, at what size. */
export function BenchPanel({ onClose }: { readonly onClose: () => void }) {
  const { people, personId } = useAppState();
  const { theme, size, pixelsPerMm } = useBenchSettings();
  const switchTo = useChange('person.switch');
  const here = people.filter((person) => person.here);
  const shownPixelsPerMm = pixelsPerMm ?? guessedPixelsPerMm;
  const sliderId = useId();

  return (
    <Panel
      title="At the bench"
      onClose={onClose}
      foot={
        <div className={styles.links}>
          <Button
            look="link"
            onPress={() => {
              onClose();
              go({ name: 'setup' });
            }}
          >
            Shop and people
          </Button>
          <Button look="link" keyCap="?" onPress={() => openPanel('keys')}>
            Keys
          </Button>
        </div>
      }
    >
      {here.length > 0 && (
        <Choice
          label="Who works here now"
          hint="The name goes on everything that is written from now on."
          layout="column"
          value={personId}
          onChoose={(id) => switchTo.run({ id })}
          options={here.map((person, index) => ({
            value: person.id,
            words: person.name,
            note: person.trade === '' ? undefined : person.trade,
            keyCap: index < 9 ? String(index + 1) : undefined,
          }))}
        />
      )}
      {switchTo.error !== null && <ErrorNote {...wordsOf(switchTo.error)} />}
      <Choice
        label="Light"
        layout="column"
        value={theme}
        onChoose={(chosen) => changeBenchSettings({ theme: chosen })}
        options={themeOptions}
      />
      <Choice
        label="Size"
        layout="column"
        value={size}
        onChoose={(chosen) => changeBenchSettings({ size: chosen })}
        options={sizeOptions}
      />
      {size === 'bench' && (
        <div className={styles.calibrate}>
          <label htmlFor={sliderId}>Hold a rule to the screen and make this bar {barMm} mm long.</label>
          <span className={styles.bar} style={{ width: `${shownPixelsPerMm * barMm}px` }} />
          <input
            id={sliderId}
            className={styles.slider}
            type="range"
            min={2}
            max={9}
            step={0.02}
            value={shownPixelsPerMm}
            onChange={(event) => changeBenchSettings({ pixelsPerMm: Number(event.target.value) })}
          />
        </div>
      )}
    </Panel>
  );
}
