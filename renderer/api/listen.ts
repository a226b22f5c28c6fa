import type { QueryClient } from '@tanstack/react-query';
import type { RecorderEvent } from '../../shared-lib/contract/events.ts';
import { bridge } from './bridge.ts';
import { endImports, noteImport } from './imports.ts';
import { noteRecorder } from './recorder-state.ts';
import { type AnswerKey, isTouched } from './touched.ts';

/** Hears the recorder once for the whole window. Returns the way to stop. */
export function listen(client: QueryClient, runCommand: (name: string) => void): () => void {
  return bridge.on((event: RecorderEvent) => {
    switch (event.event) {
      case 'changed':
        void client.invalidateQueries({
          predicate: (query) => isTouched(query.queryKey as unknown as AnswerKey, query.state.data, event),
        });
        return;
      case 'import':
        noteImport(event);
        return;
      case 'recorder':
        noteRecorder({ state: event.state, atMs: event.atMs, reason: event.reason });
        if (event.state !== 'running') endImports();
        // What was asked while it was away was refused, and what it did before it died may never have been told.
        if (event.state !== 'gone') void client.invalidateQueries();
        return;
      case 'damage':
        void client.invalidateQueries({ queryKey: ['app.state'] });
        return;
      case 'command':
        runCommand(event.name);
    }
  });
}
