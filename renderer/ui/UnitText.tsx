import { classNames } from './class-names.ts';
import styles from './UnitText.module.css';

interface UnitTextProps {
  readonly value: string;
  readonly unit: string;
}

/** A number with its unit small and soft behind a thin gap. */
export function UnitText({ value, unit }: UnitTextProps) {
  const closesUp = unit === '°' || unit === '′';
  return (
    <span className={styles.number}>
      {value}
      {!closesUp && '\u202f'}
      <span className={classNames(styles.unit, closesUp && styles.closed)}>{unit}</span>
    </span>
  );
}
