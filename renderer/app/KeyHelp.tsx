import { compareKeys } from '../compare/keys.ts';
import { tools } from '../stage/tools/index.ts';
import { stageWords } from '../stage/words.ts';
import { KeyCap } from '../ui/KeyCap.tsx';
import { Panel } from '../ui/Panel.tsx';
import { commandPlaces, commands } from './commands.ts';
import styles from './KeyHelp.module.css';

const placeWords = {
  everywhere: 'Everywhere',
  floor: 'On the floor',
  machine: 'At a machine',
  visit: 'In a visit',
  photos: 'At a photo',
  report: 'At the report',
} as const;

/** Every key, by place. */
export function KeyHelp({ onClose }: { readonly onClose: () => void }) {
  const groups = commandPlaces
    .map((place) => ({ place, list: commands.filter(({ where }) => where === place) }))
    .filter(({ list }) => list.length > 0);
  return (
    <Panel title="Keys" onClose={onClose} isOnlyRead>
      {groups.map(({ place, list }) => (
        <section key={place} className={styles.group}>
          <h3>{placeWords[place]}</h3>
          <dl className={styles.list}>
            {list.map((command) => (
              <div key={command.id} style={{ display: 'contents' }}>
                <dt>
                  <span className="spoken-only">{command.key}</span>
                  <KeyCap of={command.key} />
                </dt>
                <dd>{command.words}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
      <section className={styles.group}>
        <h3>On the photo</h3>
        <dl className={styles.list}>
          {tools.map((tool) => (
            <div key={tool.name} style={{ display: 'contents' }}>
              <dt>
                <span className="spoken-only">{tool.key}</span>
                <KeyCap of={tool.key} />
              </dt>
              <dd>
                {tool.word}. {tool.hint}
              </dd>
            </div>
          ))}
        </dl>
        <p className="soft small">N and B: the next photo and the one before. {stageWords.keys}</p>
      </section>
      <section className={styles.group}>
        <h3>Then and now</h3>
        <dl className={styles.list}>
          {compareKeys.map(({ key, words }) => (
            <div key={key} style={{ display: 'contents' }}>
              <dt>
                <span className="spoken-only">{key}</span>
                <KeyCap of={key} />
              </dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
        <p className="soft small">
          Arrow keys move a matching point, Shift ten times as far; Delete takes it off. On the photo arrow keys move
          it, plus and minus zoom, 0 shows all.
        </p>
      </section>
      <p className="soft small">While you type in a field, only keys with Ctrl or Alt are heard.</p>
    </Panel>
  );
}
