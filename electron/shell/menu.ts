import { app, Menu, type MenuItemConstructorOptions } from 'electron';
import type { RecorderEvent } from '../../shared-lib/contract/events.ts';

/** Every item of ours sends a command by its name; the window knows what that means at the place it is at. */
export function setupMenu(tell: (event: RecorderEvent) => void): void {
  // The key is only shown: the page hears keys itself, because inside a text field they belong to the text.
  const command = (label: string, name: string, accelerator: string): MenuItemConstructorOptions => ({
    label,
    click: () => tell({ event: 'command', name }),
    accelerator,
    registerAccelerator: false,
  });

  const menus: MenuItemConstructorOptions[] = [
    {
      label: '&File',
      submenu: [
        command('Take in a machine', 'machine.new', 'CmdOrCtrl+N'),
        command('Take in photos', 'photos.take', 'CmdOrCtrl+O'),
        command('The report', 'report.open', 'CmdOrCtrl+P'),
        command('Print calibration cards', 'card.open', 'CmdOrCtrl+Shift+P'),
        { type: 'separator' },
        command('Shop and people', 'setup.open', 'CmdOrCtrl+,'),
        { type: 'separator' },
        { role: 'quit' },
      ],
    },
    {
      label: '&Edit',
      submenu: [
        command('Undo', 'edit.undo', 'CmdOrCtrl+Z'),
        command('Redo', 'edit.redo', 'CmdOrCtrl+Shift+Z'),
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
        command('To the floor', 'floor.open', 'CmdOrCtrl+Home'),
        command('Find', 'find.open', 'CmdOrCtrl+F'),
        command('Who works here, light and size', 'bench.open', 'CmdOrCtrl+B'),
        command('Keys', 'help.keys', '?'),
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
