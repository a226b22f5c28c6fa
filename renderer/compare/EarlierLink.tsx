import { useAnswer } from '../api/queries.ts';
import { useLetterKeys } from '../stage/use-letter-keys.ts';
import { KeyCap } from '../ui/KeyCap.tsx';
import styles from './EarlierLink.module.css';
import { openKey } from './keys.ts';
import { thenWords } from './words.ts';

interface EarlierLinkProps {
  readonly shotId: string;
  readonly onOpen: (earlierShotId: string) => void;
}

/** The way from a photo to the one of the same part at an earlier visit. Nothing where the machine has none. */
export function EarlierLink({ shotId, onOpen }: EarlierLinkProps) {
  const offered = useAnswer('comparison.earlier', { shotId }).data ?? [];
  const best =
    offered.find(({ isKept }) => isKept) ??
    offered.find(({ because }) => because === 'same-finding') ??
    offered.find(({ because }) => because === 'same-part') ??
    offered[0];
  useLetterKeys((letter) => {
    if (letter !== openKey || !best) return false;
    onOpen(best.shot.id);
    return true;
  });
  if (!best) return null;
  return (
    <button type="button" className={styles.link} aria-keyshortcuts={openKey} onClick={() => onOpen(best.shot.id)}>
      <span>
        {best.because === 'same-machine' && !best.isKept
          ? 'Then and now: with an earlier photo'
          : `Then and now: ${thenWords(best)}`}
      </span>
      <KeyCap of={openKey} />
    </button>
  );
}
