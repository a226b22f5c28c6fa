import { classNames } from '../ui/class-names.ts';
import { KeyCap } from '../ui/KeyCap.tsx';
import painted from '../ui/painted.module.css';
import styles from './ToolRail.module.css';
import { type Tool, type ToolName, tools } from './tools/index.ts';
import { useLetterKeys } from './use-letter-keys.ts';
import { stageWords } from './words.ts';

interface ToolRailProps {
  readonly tool: ToolName;
  readonly onToolChange: (tool: ToolName) => void;
}

/** The tools within a thumb's reach: icon, word and key. The one in hand is painted. */
export function ToolRail({ tool, onToolChange }: ToolRailProps) {
  useLetterKeys((letter) => {
    const meant = tools.find(({ key }) => key === letter);
    if (meant) onToolChange(meant.name);
    return meant !== undefined;
  });
  return (
    <div className={styles.rail} role="toolbar" aria-orientation="vertical" aria-label={stageWords.tools}>
      {tools.map((each) => (
        <button
          key={each.name}
          type="button"
          className={classNames(styles.tool, each.name === tool && painted.painted)}
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
