import { PersonChip } from '../ui/PersonChip.tsx';
import { usePersonName } from './app-state.ts';
import { togglePanel } from './panels.ts';

/** The chip at the end of every header. */
export function WhoChip() {
  return <PersonChip name={usePersonName()} onPress={() => togglePanel('bench')} />;
}
