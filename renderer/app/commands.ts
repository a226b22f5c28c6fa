/** Where a command is offered; the help lists them in this order. */
export const commandPlaces = ['everywhere', 'floor', 'machine', 'visit', 'photos', 'report'] as const;
export type CommandPlace = (typeof commandPlaces)[number];

export interface Command {
  readonly id: string;
  /** What it does, as a mechanic would say it. */
  readonly words: string;
  /** As `KeyboardEvent.key`, with `Ctrl+`, `Shift+` and `Alt+` before it. */
  readonly key: string;
  readonly where: CommandPlace;
}

/** Every key there is. A screen answers a command with `useCommand`; one without an answer does nothing. */
export const commands = [
  { id: 'help.keys', words: 'Show or hide this list', key: '?', where: 'everywhere' },
  { id: 'floor.open', words: 'To the floor', key: 'Ctrl+Home', where: 'everywhere' },
  { id: 'find.open', words: 'Find', key: 'Ctrl+F', where: 'everywhere' },
  { id: 'machine.new', words: 'Take in a machine', key: 'Ctrl+N', where: 'everywhere' },
  { id: 'place.back', words: 'Back to where you were', key: 'Alt+ArrowLeft', where: 'everywhere' },
  { id: 'place.forward', words: 'Forward again', key: 'Alt+ArrowRight', where: 'everywhere' },
  { id: 'bench.open', words: 'Who works here, light and size', key: 'Ctrl+B', where: 'everywhere' },
  { id: 'theme.next', words: 'Next light: bench, sunlight, night', key: 'Ctrl+L', where: 'everywhere' },
  { id: 'size.next', words: 'Desk size or bench size', key: 'Ctrl+Shift+L', where: 'everywhere' },
  { id: 'card.open', words: 'Print calibration cards', key: 'Ctrl+Shift+P', where: 'everywhere' },
  { id: 'setup.open', words: 'Shop and people', key: 'Ctrl+,', where: 'everywhere' },
  { id: 'floor.find', words: 'Find', key: '/', where: 'floor' },
  { id: 'floor.takeIn', words: 'Take in a machine', key: 'N', where: 'floor' },
  { id: 'floor.next', words: 'Next machine', key: 'ArrowDown', where: 'floor' },
  { id: 'floor.previous', words: 'Previous machine', key: 'ArrowUp', where: 'floor' },
  { id: 'takeIn.finish', words: 'Take it in, open the visit', key: 'Ctrl+Enter', where: 'floor' },
  { id: 'machine.goOn', words: 'Go on with the open visit', key: 'G', where: 'machine' },
  { id: 'machine.openVisit', words: 'It is here again: open a visit', key: 'N', where: 'machine' },
  { id: 'edit.undo', words: 'Undo', key: 'Ctrl+Z', where: 'visit' },
  { id: 'edit.redo', words: 'Redo', key: 'Ctrl+Shift+Z', where: 'visit' },
  { id: 'visit.page', words: 'The page', key: 'Ctrl+1', where: 'visit' },
  { id: 'visit.photos', words: 'The photos', key: 'Ctrl+2', where: 'visit' },
  { id: 'visit.sheets', words: 'The sheets', key: 'Ctrl+3', where: 'visit' },
  { id: 'visit.causes', words: 'The causes', key: 'Ctrl+5', where: 'visit' },
  { id: 'visit.find', words: 'Find a sheet, or a line of the table of causes', key: '/', where: 'visit' },
  { id: 'visit.choices', words: 'The choices', key: 'Ctrl+4', where: 'visit' },
  { id: 'visit.work', words: 'The work done and the hand-over', key: 'Ctrl+6', where: 'visit' },
  { id: 'ending.first', words: 'The statement ends the first way', key: '1', where: 'visit' },
  { id: 'ending.second', words: 'The statement ends the second way', key: '2', where: 'visit' },
  { id: 'ending.third', words: 'The statement ends the third way', key: '3', where: 'visit' },
  { id: 'ending.fourth', words: 'The statement ends the fourth way', key: '4', where: 'visit' },
  { id: 'report.open', words: 'The report', key: 'Ctrl+P', where: 'visit' },
  { id: 'photos.take', words: 'Take in photos', key: 'Ctrl+O', where: 'visit' },
] as const satisfies readonly Command[];

export type CommandId = (typeof commands)[number]['id'];

interface KeyPress {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

/**
 * The key as the list writes it. Shift counts only beside Ctrl or Alt, or with a key that has a name: a `?` is a `?`
 * however the keyboard makes it. The command key of one kind of keyboard counts as Ctrl.
 */
export function keyName(press: KeyPress): string {
  const isLetter = /^\p{L}$/u.test(press.key);
  const key = isLetter ? press.key.toUpperCase() : press.key;
  const chord = press.ctrlKey || press.metaKey || press.altKey;
  const counts = press.shiftKey && (chord || press.key.length > 1);
  return [press.ctrlKey || press.metaKey ? 'Ctrl' : '', press.altKey ? 'Alt' : '', counts ? 'Shift' : '', key]
    .filter((part) => part !== '')
    .join('+');
}

/** The commands that a key may mean; which one, is decided by who answers. */
export function commandsOfKey(name: string): readonly CommandId[] {
  return commands.filter(({ key }) => key === name).map(({ id }) => id);
}

export function keyOf(id: CommandId): string {
  return commands.find((command) => command.id === id)?.key ?? '';
}
