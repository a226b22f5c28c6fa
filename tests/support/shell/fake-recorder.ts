/** A child that speaks the recorder's part of the envelope, and dies when told to. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { FromRecorder, ToRecorder } from '../../../shared-lib/contract/envelope.ts';

const dataFolder = process.argv[process.argv.indexOf('--data') + 1] ?? '';
const offered = new Map<string, string>();
const tell = (message: FromRecorder) => process.send?.(message);
/** Larger than a pipe holds, so that the reader has only a part of it when the writer is gone. */
const manyBytes = 64 * 1024 * 1024;

process.on('disconnect', () => process.exit(0));
process.on('message', (message: ToRecorder) => {
  if (message.kind === 'stop') process.exit(0);
  if (message.kind === 'offer') offered.set(message.offer.token, message.offer.path);
  if (message.kind === 'photo') {
    const path = message.request.url.endsWith('known') ? '/store/known' : null;
    tell({ kind: 'photo', answer: { id: message.request.id, path, mediaType: path && 'image/jpeg' } });
  }
  if (message.kind === 'call') answer(message.call.id, message.call.windowId, message.call.name, message.call.input);
});

function answer(id: number, windowId: string, name: string, input: unknown): void {
  const reply = (output: unknown) => tell({ kind: 'reply', reply: { id, ok: true, output } });
  switch (name) {
    case 'echo':
      reply({ windowId, input });
      return;
    case 'environment':
      reply({
        node: process.versions.node,
        electron: process.env.ELECTRON_RUN_AS_NODE,
        options: process.env.NODE_OPTIONS,
      });
      return;
    case 'path-of-token':
      reply(offered.get(String(input)) ?? null);
      return;
    case 'die-before-replying':
      process.kill(process.pid, 'SIGKILL');
      return;
    case 'die-while-replying':
      reply(new Uint8Array(manyBytes));
      process.kill(process.pid, 'SIGKILL');
      return;
    case 'never':
      return;
  }
}

if (existsSync(join(dataFolder, 'held'))) {
  process.send?.({ kind: 'cannot-open', error: { code: 'folder-held', details: { holder: 'other' } } }, () =>
    process.exit(0),
  );
} else {
  tell({ kind: 'ready' });
}
