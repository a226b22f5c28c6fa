import { classNames } from './class-names.ts';
import styles from './LadderRule.module.css';

export type Rung = 0 | 1 | 2 | 3 | 4 | 'not-looked-at';

interface LadderRuleProps {
  readonly rung: Rung;
  /** The tier's word; a rule alone is not enough. */
  readonly word?: string | undefined;
}

const rungs = {
  0: styles.tier0,
  1: styles.tier1,
  2: styles.tier2,
  3: styles.tier3,
  4: styles.tier4,
  'not-looked-at': styles.unseen,
};

/** Head of a tier in the standing: how bad it is, said by weight and by word. */
export function LadderRule({ rung, word }: LadderRuleProps) {
  return (
    <>
      <hr className={classNames(styles.rung, rungs[rung])} />
      {word !== undefined && <h3 className={styles.word}>{word}</h3>}
    </>
  );
}
