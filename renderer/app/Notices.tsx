import { readRecorderNotice, useRecorderState } from '../api/recorder-state.ts';
import { Button } from '../ui/Button.tsx';
import { NoticeStrip } from '../ui/NoticeStrip.tsx';
import { clockWords } from '../ui/words.ts';
import { openPanel } from './panels.ts';

interface NoticesProps {
  /** What the check after the start found. */
  readonly damage: string | null;
}

/** The dark strips over everything; none of them blinks or goes away by itself. */
export function Notices({ damage }: NoticesProps) {
  const recorder = useRecorderState();
  return (
    <>
      {recorder.state === 'gone' && (
        <NoticeStrip
          happened={`The recorder stopped at ${clockWords(recorder.atMs)}.`}
          kept="Everything up to your last tap is kept. It is being started again."
        >
          <Button look="link" onPress={() => openPanel('happened')}>
            What happened
          </Button>
        </NoticeStrip>
      )}
      {recorder.state === 'restarted' && (
        <NoticeStrip
          happened={`The recorder stopped and was started again at ${clockWords(recorder.atMs)}.`}
          kept="Everything up to your last tap is kept."
        >
          <Button look="link" onPress={() => openPanel('happened')}>
            What happened
          </Button>
          <Button look="link" onPress={readRecorderNotice}>
            Put away
          </Button>
        </NoticeStrip>
      )}
      {damage !== null && (
        <NoticeStrip
          happened={`The check of the data folder found a fault: ${damage}.`}
          kept="Copy the data folder before you go on."
        />
      )}
    </>
  );
}
