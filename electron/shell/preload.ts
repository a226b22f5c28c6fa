import { contextBridge, type IpcRendererEvent, ipcRenderer, webUtils } from 'electron';
import type { Bridge } from '../../shared-lib/contract/bridge.ts';
import type { RecorderEvent } from '../../shared-lib/contract/events.ts';
import { channels } from './channels.ts';

const bridge: Bridge = {
  call: (name, input) => ipcRenderer.invoke(channels.call, name, input),

  on(listener) {
    const hear = (_: IpcRendererEvent, event: RecorderEvent) => listener(event);
    ipcRenderer.on(channels.event, hear);
    return () => {
      ipcRenderer.off(channels.event, hear);
    };
  },

  // Only a File that the system handed to the window has a path: the page cannot make one up.
  offerFiles(files) {
    const paths = files.map((file) => (file instanceof File ? webUtils.getPathForFile(file) : ''));
    return ipcRenderer.invoke(channels.offer, paths);
  },
};

contextBridge.exposeInMainWorld('witness', bridge);
