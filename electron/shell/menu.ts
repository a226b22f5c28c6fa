import { app, Menu, type MenuItemConstructorOptions } from 'electron';
import type { RecorderEvent } from '../../shared-lib/contract/events.ts';

/** Every item of ours sends a command by its name; the window knows what that means at the place it is at. */
export function setupMenu(tell: (event: RecorderEvent) => void): void {
  const command = (label: string, name: string, more: MenuItemConstructorOptions = {}): MenuItemConstructorOptions => ({
    label,
    click: () => tell({ event: 'command', name }),
    ...more,
  });
  // The page hears these keys itself: inside a text field they belong to the text.
  const keyOfThePage = (accelerator: string) => ({ accelerator, registerAccelerator: false });

  const menus: MenuItemConstructorOptions[] = [
    {
      label: '&File',
      submenu: [
        command('New machine', 'machine.new', { accelerator: 'CmdOrCtrl+N' }),
        command('Take in photos…', 'photos.take', { accelerator: 'CmdOrCtrl+O' }),
        { type: 'separator' },
        command('Report', 'report.open', { accelerator: 'CmdOrCtrl+P' }),
        { type: 'separator' },
        { role: 'quit' },
      ],
    },
    {
      label: '&Edit',
      submenu: [
        command('Undo', 'edit.undo', keyOfThePage('CmdOrCtrl+Z')),
        command('Redo', 'edit.redo', keyOfThePage('CmdOrCtrl+Shift+Z')),
        { type: 'separator' },
        { role: 'cut' },
        { role: 'copy' },
        { role: 'paste' },
        { role: 'selectAll' },
      ],
    },
    {
      label: '&View',
      submenu: [
        command('Floor', 'floor.open', { accelerator: 'CmdOrCtrl+Home' }),
        command('Find', 'find.open', { accelerator: 'CmdOrCtrl+F' }),
        { type: 'separator' },
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { role: 'togglefullscreen' },
        ...(app.isPackaged ? [] : [{ type: 'separator' } as const, { role: 'toggleDevTools' } as const]),
      ],
    },
  ];
  if (process.platform === 'darwin') menus.unshift({ role: 'appMenu' });
  Menu.setApplicationMenu(Menu.buildFromTemplate(menus));
}
