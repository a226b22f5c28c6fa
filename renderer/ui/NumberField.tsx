import { TextField, type TextFieldProps } from './TextField.tsx';

type NumberFieldProps = Omit<TextFieldProps, 'lines' | 'digits'>;

/** A number as it stands on the gauge. It stays text: what it means is decided where it is kept, never while typing. */
export function NumberField(props: NumberFieldProps) {
  return <TextField {...props} digits />;
}
