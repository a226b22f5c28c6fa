import type { ReactNode, Ref } from 'react';
import type { ErrorWords } from '../ui/ErrorNote.tsx';
import { NumberField } from '../ui/NumberField.tsx';
import { readHours } from './read-hours.ts';

interface HoursFieldProps {
  readonly label?: string | undefined;
  readonly value: string;
  readonly onChange: (typed: string) => void;
  readonly hint?: string | undefined;
  readonly error?: ErrorWords | undefined;
  readonly beside?: ReactNode;
  readonly ref?: Ref<HTMLInputElement & HTMLTextAreaElement> | undefined;
}

/** The hour meter as it stands on the machine. Kept as typed; asked about where it is not one number. */
export function HoursField({ label = 'Hour meter shows', value, onChange, hint, error, beside, ref }: HoursFieldProps) {
  const read = readHours(value);
  const unclear =
    read.kind === 'unclear'
      ? { happened: read.why, kept: 'Kept as you typed it. Hours are counted once it is one number.' }
      : undefined;
  return (
    <NumberField
      ref={ref}
      label={label}
      value={value}
      onChange={onChange}
      unit="h"
      hint={hint}
      error={error ?? unclear}
      beside={beside}
      maxLength={60}
    />
  );
}
