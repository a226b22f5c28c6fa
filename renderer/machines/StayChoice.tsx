import { useState } from 'react';
import type { MachineVisit } from '../../shared-lib/contract/machines.ts';
import { Button } from '../ui/Button.tsx';
import { Choice, type ChoiceOption } from '../ui/Choice.tsx';
import { dateWords, hoursWords } from '../ui/words.ts';

const notHere = 'not here';
/** As many as can be read at one look. */
const atFirst = 4;

interface StayChoiceProps {
  readonly label: string;
  /** Newest first. */
  readonly visits: readonly MachineVisit[];
  /** Null: not in a visit of this shop. */
  readonly visitId: string | null;
  readonly onChoose: (visitId: string | null) => void;
  readonly notHereWords?: string | undefined;
}

/** In which stay something was done. */
export function StayChoice({ label, visits, visitId, onChoose, notHereWords }: StayChoiceProps) {
  const [showsAll, setShowsAll] = useState(false);
  const shown = visits.filter(({ visit }, index) => showsAll || index < atFirst || visit.id === visitId);
  const options: ChoiceOption<string>[] = shown.map(({ visit, trueHours }) => ({
    value: visit.id,
    words: dateWords(visit.date),
    note: trueHours === null ? undefined : hoursWords(trueHours),
  }));
  if (notHereWords !== undefined) options.push({ value: notHere, words: notHereWords });
  return (
    <div>
      <Choice
        label={label}
        layout="column"
        options={options}
        value={visitId ?? notHere}
        onChoose={(chosen) => onChoose(chosen === notHere ? null : chosen)}
      />
      {shown.length < visits.length && (
        <Button look="link" onPress={() => setShowsAll(true)}>
          Earlier visits
        </Button>
      )}
    </div>
  );
}
