import type { Verdict } from '../../shared-lib/model/reading.ts';
import { verdictWeight } from '../../shared-lib/readings/verdict-weight.ts';
import { classNames } from '../ui/class-names.ts';
import styles from './VerdictMark.module.css';

interface VerdictMarkProps {
  readonly verdict: Verdict;
}

/** A verdict in its word, set as heavily as it weighs. */
export function VerdictMark({ verdict }: VerdictMarkProps) {
  return <span className={classNames(styles.verdict, styles[verdictWeight(verdict)])}>{verdict}</span>;
}
