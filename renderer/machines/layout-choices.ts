import type { Layout } from '../../shared-lib/model/layout.ts';
import type { ChoiceOption } from '../ui/Choice.tsx';

type Engine = Layout['engine'];

export const cylinderCounts = ['1', '2', '3', '4', '6', '8', '12'] as const;

export const arrangements: readonly ChoiceOption<Engine['arrangement']>[] = [
  { value: 'inline', words: 'in line' },
  { value: 'V', words: 'in a V' },
  { value: 'opposed', words: 'opposed' },
];

export const liners: readonly ChoiceOption<Engine['liner']>[] = [
  { value: 'parent', words: 'bored in the block' },
  { value: 'dry', words: 'dry' },
  { value: 'wet', words: 'wet' },
  { value: 'unknown', words: 'not known yet' },
];

export const linerStops: readonly ChoiceOption<NonNullable<Engine['linerStop']>>[] = [
  { value: 'top-flange', words: 'at the top flange' },
  { value: 'mid-stop', words: 'half way down' },
  { value: 'bottom-stop', words: 'at the bottom' },
];

export const coolings: readonly ChoiceOption<Engine['cooling']>[] = [
  { value: 'liquid', words: 'coolant' },
  { value: 'air', words: 'air' },
  { value: 'oil', words: 'oil' },
];

export const fuels: readonly ChoiceOption<Engine['fuel']>[] = [
  { value: 'diesel', words: 'diesel' },
  { value: 'petrol', words: 'petrol' },
  { value: 'LPG', words: 'LPG' },
  { value: 'gas', words: 'gas' },
];

export const rotations: readonly ChoiceOption<Engine['rotation']>[] = [
  { value: 'CW', words: 'clockwise' },
  { value: 'CCW', words: 'counter-clockwise' },
];

export const schemes: readonly ChoiceOption<Layout['numbering']['scheme']>[] = [
  { value: 'free-first', words: 'from the fan end' },
  { value: 'drive-first', words: 'from the flywheel' },
  { value: 'list', words: 'by its own list' },
];

export const headings: readonly ChoiceOption<'0' | '90' | '180' | '270'>[] = [
  { value: '0', words: 'fan to the front' },
  { value: '180', words: 'fan to the rear' },
  { value: '90', words: 'fan to the right' },
  { value: '270', words: 'fan to the left' },
];

export const voltages: readonly ChoiceOption<'6' | '12' | '24' | '48'>[] = [
  { value: '6', words: '6' },
  { value: '12', words: '12' },
  { value: '24', words: '24' },
  { value: '48', words: '48' },
];

/** Working hydraulics that many machines have; others are typed. */
export const usualFunctions = ['boom', 'bucket', 'blade', 'lift', 'tilt', 'jack', 'hoist', 'ripper'] as const;

/** Optional parts that a caution or a named condition asks for. */
export const optionalParts = [
  { path: 'PROT/ROPS', words: 'roll-over structure' },
  { path: 'PROT/ARMSUP', words: 'lift-arm support' },
  { path: 'ELEC/INTLK', words: 'safety interlock' },
  { path: 'DRV/PTO', words: 'power take-off' },
  { path: 'FRM/OUTR', words: 'outriggers' },
] as const;
