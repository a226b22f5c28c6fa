import type { ReactNode } from 'react';
import { classNames } from './class-names.ts';
import styles from './Plate.module.css';

export interface PlateField {
  readonly label: string;
  readonly value: ReactNode;
}

interface PlateProps {
  readonly title: string;
  readonly fields: readonly PlateField[];
  readonly size?: 'small' | 'large' | undefined;
  /** Not stamped yet: drawn dashed, without metal. */
  readonly blank?: boolean | undefined;
  /** Level of the heading that the machine's kind is; left out where the plate is only repeated. */
  readonly heading?: 1 | 2 | 3 | undefined;
  readonly className?: string | undefined;
}

/** Letters from which on a title is stamped smaller, so that it stays on one line as long as it can. */
const longTitle = { small: 19, large: 21 } as const;

/** The identity plate of one machine. */
export function Plate({ title, fields, size = 'small', blank = false, heading, className }: PlateProps) {
  const Title = heading === undefined ? 'div' : (`h${heading}` as const);
  return (
    <div
      className={classNames(
        styles.plate,
        size === 'large' && styles.large,
        title.length > longTitle[size] && styles.long,
        blank && styles.blank,
        className,
      )}
    >
      <span className={classNames(styles.rivet, styles.left)} />
      <span className={classNames(styles.rivet, styles.right)} />
      <Title className={styles.title}>{title}</Title>
      <dl className={styles.fields}>
        {fields.map((field) => (
          <div key={field.label} className={styles.field}>
            <dt className={styles.label}>{field.label}</dt>
            <dd className={styles.value}>{field.value}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
