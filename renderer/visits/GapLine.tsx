import { type Gap, notExaminedReasons } from '../../shared-lib/notebook/gaps.ts';
import { wordsOf } from '../api/client.ts';
import { useChange } from '../api/queries.ts';
import { Button } from '../ui/Button.tsx';
import { PaintedPanel } from '../ui/PaintedPanel.tsx';
import styles from './GapLine.module.css';

interface GapLineProps {
  readonly gap: Gap;
  readonly visitId: string;
  /** The one that is painted: its endings stand ready. */
  readonly inHand: boolean;
  readonly onFinding: (findingId: string) => void;
  readonly onVisit: () => void;
}

/** What is missing, as a blank line at its place; the one in hand offers its endings as words. */
export function GapLine({ gap, inHand, onFinding, onVisit }: GapLineProps) {
  const scope = useChange('scope.change');
  const answers = () => {
    switch (gap.fill) {
      case 'complaint':
      case 'hours':
        return [{ words: gap.fill === 'hours' ? 'Read the meter' : 'Write it down', onPress: onVisit }];
      case 'finding':
        return [{ words: `Open finding ${gap.number}`, onPress: () => onFinding(gap.findingId) }];
      case 'scope':
        return notExaminedReasons.map((reason) => ({
          words: reason,
          onPress: () => scope.run({ id: gap.scopeItemId, notExaminedBecause: reason }),
        }));
      case 'photos':
        return [];
    }
  };
  if (!inHand) {
    const [first, ...others] = answers();
    return (
      <li className={styles.blank}>
        <span className={styles.words}>{gap.words}</span>
        {first !== undefined && others.length === 0 ? (
          <Button look="link" onPress={first.onPress}>
            {first.words}
          </Button>
        ) : (
          <span className={styles.line} aria-hidden="true" />
        )}
      </li>
    );
  }
  return (
    <li className={styles.inHand}>
      <PaintedPanel className={styles.painted}>
        <span className={styles.words}>{gap.words}</span>
        <span className={styles.answers}>
          {answers().map(({ words, onPress }) => (
            <Button key={words} look="on-blue" onPress={onPress} disabled={scope.isRunning}>
              {words}
            </Button>
          ))}
        </span>
        {scope.error !== null && <span role="alert">{wordsOf(scope.error).happened}</span>}
      </PaintedPanel>
    </li>
  );
}
