import { useState } from 'react';
import type { Layout } from '../../shared-lib/model/layout.ts';
import { speakNumbering } from '../../shared-lib/parts/speak-numbering.ts';
import { Choice } from '../ui/Choice.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import { TextField } from '../ui/TextField.tsx';
import { Toggle } from '../ui/Toggle.tsx';
import { EngineSketch } from './EngineSketch.tsx';
import styles from './LayoutForm.module.css';
import * as choices from './layout-choices.ts';
import { MakersList } from './MakersList.tsx';
import { readFunctionWords, withEngine, withPart } from './usual-layout.ts';

interface LayoutFormProps {
  readonly layout: Layout;
  readonly onChange: (layout: Layout) => void;
}

/** What the component tree is made from. Every answer has a usual one, so nothing blocks. */
export function LayoutForm({ layout, onChange }: LayoutFormProps) {
  const { engine, numbering } = layout;
  const setEngine = (change: Partial<Layout['engine']>) => onChange(withEngine(layout, change));
  const counts: readonly string[] = choices.cylinderCounts;
  const isOddCount = !counts.includes(String(engine.cylinders));

  return (
    <div className={styles.form}>
      <div className={styles.pair}>
        <Choice
          label="Cylinders"
          value={isOddCount ? null : String(engine.cylinders)}
          options={counts.map((count) => ({ value: count, words: count }))}
          onChoose={(count) => setEngine({ cylinders: Number(count) })}
        />
        <OtherCount
          key={engine.cylinders}
          count={isOddCount ? engine.cylinders : null}
          onCount={(cylinders) => setEngine({ cylinders })}
        />
      </div>
      {engine.cylinders > 1 && (
        <Choice
          label="They stand"
          value={engine.arrangement}
          options={choices.arrangements}
          onChoose={(arrangement) => setEngine({ arrangement })}
        />
      )}
      {engine.cylinders > 1 && (
        <Choice
          label="Cylinder 1 is counted"
          value={numbering.scheme}
          options={choices.schemes}
          onChoose={(scheme) => onChange({ ...layout, numbering: { scheme } })}
        />
      )}
      {numbering.scheme === 'list' && (
        <MakersList key={`${engine.cylinders}-${engine.arrangement}`} layout={layout} onChange={onChange} />
      )}
      <div className={styles.sketch}>
        <EngineSketch layout={layout} />
        <p className={styles.spoken}>{speakNumbering(layout)}</p>
      </div>
      <div className={styles.pair}>
        <Choice label="Fuel" value={engine.fuel} options={choices.fuels} onChoose={(fuel) => setEngine({ fuel })} />
        <Choice
          label="Cooled by"
          value={engine.cooling}
          options={choices.coolings}
          onChoose={(cooling) => setEngine({ cooling })}
        />
      </div>
      <Choice label="Liners" value={engine.liner} options={choices.liners} onChoose={(liner) => setEngine({ liner })} />
      {engine.liner === 'wet' && (
        <Choice
          label="The wet liner seats"
          value={engine.linerStop ?? null}
          options={choices.linerStops}
          onChoose={(linerStop) => setEngine({ linerStop })}
        />
      )}
      <div className={styles.pair}>
        <Choice
          label="Turns, seen from the fan"
          value={engine.rotation}
          options={choices.rotations}
          onChoose={(rotation) => setEngine({ rotation })}
        />
        <Choice
          label="Volts"
          value={volts(layout)}
          options={choices.voltages}
          onChoose={(chosen) => onChange({ ...layout, volts: voltsOf[chosen] })}
        />
      </div>
      <Choice
        label="The engine lies in the machine"
        value={headingText(engine.heading)}
        options={choices.headings}
        onChoose={(chosen) => setEngine({ heading: headingOf[chosen] })}
      />
      <Hydraulics layout={layout} onChange={onChange} />
      <fieldset>
        <legend className={styles.legend}>It has</legend>
        <div className={styles.checks}>
          <Toggle
            label="articulated frame"
            on={layout.articulated === true}
            onChange={(articulated) => onChange({ ...layout, articulated })}
          />
          <Toggle
            label="no wheels: stationary"
            on={layout.stationary === true}
            onChange={(stationary) => onChange({ ...layout, stationary })}
          />
          {choices.optionalParts.map(({ path, words }) => (
            <Toggle
              key={path}
              label={words}
              on={layout.has?.includes(path) === true}
              onChange={(has) => onChange(withPart(layout, path, has))}
            />
          ))}
        </div>
      </fieldset>
    </div>
  );
}

const voltsOf = { '6': 6, '12': 12, '24': 24, '48': 48 } as const;
const headingOf = { '0': 0, '90': 90, '180': 180, '270': 270 } as const;

function volts({ volts: value }: Layout) {
  return `${value}` as const;
}

function headingText(heading: Layout['engine']['heading']) {
  return `${heading}` as const;
}

interface OtherCountProps {
  /** Null where one of the usual counts is chosen. */
  readonly count: number | null;
  readonly onCount: (count: number) => void;
}

function OtherCount({ count, onCount }: OtherCountProps) {
  const commit = (typed: string) => {
    const number = Number(typed.trim());
    if (Number.isInteger(number) && number >= 1 && number <= 24) onCount(number);
  };
  return (
    <div style={{ width: 120 }}>
      <NumberField label="or another" value={count === null ? '' : String(count)} onCommit={commit} maxLength={2} />
    </div>
  );
}

/** The working hydraulics by the word for what they do: cylinders and hoses are named by it. */
function Hydraulics({ layout, onChange }: LayoutFormProps) {
  const usual: readonly string[] = choices.usualFunctions;
  const [others, setOthers] = useState(() => layout.hydraulics.filter((word) => !usual.includes(word)).join(', '));
  const set = (word: string, on: boolean) => {
    const rest = layout.hydraulics.filter((other) => other !== word);
    onChange({ ...layout, hydraulics: on ? [...rest, word] : rest });
  };
  const setOther = (typed: string) => {
    setOthers(typed);
    const chosen = layout.hydraulics.filter((word) => usual.includes(word));
    onChange({ ...layout, hydraulics: [...new Set([...chosen, ...readFunctionWords(typed)])] });
  };
  return (
    <fieldset>
      <legend className={styles.legend}>Hydraulic cylinders for</legend>
      <div className={styles.checks}>
        {usual.map((word) => (
          <Toggle key={word} label={word} on={layout.hydraulics.includes(word)} onChange={(on) => set(word, on)} />
        ))}
      </div>
      <TextField
        label="and for"
        value={others}
        onChange={setOther}
        hint="One word each: stick, slew, clamp. Cylinders and hoses are named by them."
        maxLength={200}
      />
    </fieldset>
  );
}
