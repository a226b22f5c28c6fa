import { classNames } from '../ui/class-names.ts';
import { KeyCap } from '../ui/KeyCap.tsx';
import { alongColumn, moveFocus } from '../ui/move-focus.ts';
import painted from '../ui/painted.module.css';
import styles from './ToolRail.module.css';
import { type Tool, type ToolName, tools } from './tools/index.ts';
import { useLetterKeys } from './use-letter-keys.ts';
import { stageWords } from './words.ts';

interface ToolRailProps {
  /** Null while something else is in hand. */
  readonly tool: ToolName | null;
  readonly onToolChange: (tool: ToolName) => void;
  /** The scale of the photo is being set: its own button is the one in hand. */
  readonly isScaling: boolean;
  readonly onScale: () => void;
}

const scaleKey = 'C';
const scaleIcon: Tool['icon'] = { lines: 'M3 21 21 3l8 8-18 18zM8 16l4 4M12.500 11.500l3 3M17 7l4 4' };

/** The tools within a thumb's reach: icon, word and key. The one in hand is painted, and where Tab comes to. */
export function ToolRail({ tool, onToolChange, isScaling, onScale }: ToolRailProps) {
  useLetterKeys((letter) => {
    const meant = tools.find(({ key }) => key === letter);
    if (meant) onToolChange(meant.name);
    if (letter === scaleKey) onScale();
    return meant !== undefined || letter === scaleKey;
  });
  return (
    <div
      className={styles.rail}
      role="toolbar"
      aria-orientation="vertical"
      aria-label={stageWords.tools}
      onKeyDown={(event) => moveFocus(event, alongColumn)}
    >
      {tools.map((each) => (
        <button
          key={each.name}
          type="button"
          className={classNames(styles.tool, each.name === tool && painted.painted)}
          tabIndex={each.name === tool ? 0 : -1}
          aria-pressed={each.name === tool}
          aria-keyshortcuts={each.key}
          title={each.hint}
          onClick={() => onToolChange(each.name)}
        >
          <ToolIcon icon={each.icon} />
          <span>{each.word}</span>
          <KeyCap of={each.key} />
        </button>
      ))}
      <button
        type="button"
        className={classNames(styles.tool, isScaling && painted.painted)}
        tabIndex={tool === null ? 0 : -1}
        aria-pressed={isScaling}
        aria-keyshortcuts={scaleKey}
        title={stageWords.scaleHint}
        onClick={onScale}
      >
        <ToolIcon icon={scaleIcon} />
        <span>{stageWords.scale}</span>
        <KeyCap of={scaleKey} />
      </button>
    </div>
  );
}

function ToolIcon({ icon }: { readonly icon: Tool['icon'] }) {
  return (
    <svg className={styles.icon} viewBox="0 0 32 32" aria-hidden="true" focusable="false">
      <path d={icon.lines} />
      {icon.dot !== undefined && <path className={styles.dot} d={icon.dot} />}
    </svg>
  );
}
