import { useState } from 'react';
import { bridge } from '../api/bridge.ts';
import { type CallError, call } from '../api/client.ts';
import { useChange } from '../api/queries.ts';

/** The ways photos come in: a dialog, a drop, a paste. Each hands tokens or bytes to the recorder and answers at once. */
export function useTakePhotos(visitId: string) {
  const take = useChange('shot.take');
  const paste = useChange('shot.paste');
  const [dialogError, setDialogError] = useState<unknown>(null);

  const takeTokens = (tokens: readonly string[]) => {
    if (tokens.length > 0) take.run({ visitId, tokens: [...tokens] });
  };
  const choose = async () => {
    setDialogError(null);
    try {
      const chosen = await call('shell.choosePhotos', {});
      if (chosen !== null) takeTokens(chosen.tokens);
    } catch (error) {
      setDialogError(error);
    }
  };
  const drop = async (files: readonly File[]) => takeTokens(await bridge.offerFiles(files));
  /** Files copied in a folder have a path; a picture copied out of a program has only its bytes. */
  const takePasted = async (files: readonly File[]) => {
    const tokens = await bridge.offerFiles(files);
    if (tokens.length === files.length) {
      takeTokens(tokens);
      return;
    }
    for (const file of files) {
      paste.run({ visitId, name: file.name, bytes: new Uint8Array(await file.arrayBuffer()) });
    }
  };
  const error: CallError | unknown = take.error ?? paste.error ?? dialogError;
  return {
    choose: () => void choose(),
    drop: (files: readonly File[]) => void drop(files),
    takePasted: (files: readonly File[]) => void takePasted(files),
    error,
  };
}
