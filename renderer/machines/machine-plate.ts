import type { Layout } from '../../shared-lib/model/layout.ts';
import type { MachinePlate } from '../../shared-lib/model/machine.ts';
import type { PlateField } from '../ui/Plate.tsx';
import { plateHours } from './floor-words.ts';
import { engineWords, firstCylinderWords, turnsWords } from './layout-words.ts';

interface PlateSource {
  readonly plate: MachinePlate;
  readonly layout: Layout;
  readonly ownerName: string;
  readonly ownerPlace: string;
  readonly hours: number | null;
  readonly isEstimate: boolean;
}

/** The nine fields of a machine's own plate, three to a row. */
export function plateFields({ plate, layout, ownerName, ownerPlace, hours, isEstimate }: PlateSource): PlateField[] {
  return [
    { label: 'serial', value: plate.serial },
    { label: 'year', value: plate.year ?? '' },
    { label: 'volts', value: String(layout.volts) },
    { label: 'engine', value: engineWords(layout) },
    { label: 'cylinder 1', value: firstCylinderWords(layout) },
    { label: 'turns', value: turnsWords(layout) },
    { label: 'owner', value: ownerName },
    { label: 'from', value: ownerPlace },
    { label: 'hours', value: plateHours(hours, isEstimate) },
  ];
}
