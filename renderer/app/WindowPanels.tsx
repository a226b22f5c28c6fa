import { useRecorderState } from '../api/recorder-state.ts';
import { Panel } from '../ui/Panel.tsx';
import { clockWords } from '../ui/words.ts';
import { LaterPlace } from './LaterPlace.tsx';
import { benchPanel, cardPanel, keyHelp } from './later-panels.ts';
import { openPanel, useOpenPanel } from './panels.ts';

/** The side sheets of the window itself. */
export function WindowPanels() {
  const open = useOpenPanel();
  const close = () => openPanel(null);
  switch (open) {
    case 'keys':
      return <LaterPlace key={open} of={keyHelp} with={{ onClose: close }} />;
    case 'bench':
      return <LaterPlace key={open} of={benchPanel} with={{ onClose: close }} />;
    case 'cards':
      return <LaterPlace key={open} of={cardPanel} with={{ onClose: close }} />;
    case 'happened':
      return <WhatHappened onClose={close} />;
    case null:
      return null;
  }
}

function WhatHappened({ onClose }: { readonly onClose: () => void }) {
  const { state, atMs, reason } = useRecorderState();
  return (
    <Panel title="What happened" onClose={onClose} isOnlyRead>
      <p>
        The recorder is the part of the program that writes to disk. It runs beside this window, so that a broken photo
        or a full disk can't take the window down.
      </p>
      {atMs > 0 && (
        <p>
          It stopped{reason === null ? '' : ` (${reason})`}.{' '}
          {state === 'gone' ? `That was at ${clockWords(atMs)}.` : `It was started again at ${clockWords(atMs)}.`}
        </p>
      )}
      <p>
        What the window had shown as done was on disk before it was shown, and is kept. Photos that were being taken in
        at that moment may not all be here: offer them again, and those that are here already are not taken twice.
      </p>
    </Panel>
  );
}
