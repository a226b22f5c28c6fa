import { changeBenchSettings, nextOf, sizes, themes, useBenchSettings } from './bench-settings.ts';
import { useCommand } from './command-keys.ts';
import { togglePanel } from './panels.ts';
import { go, goBack, goForward } from './place.ts';
import { openSearch } from './search.ts';

/** Answers the commands that hold everywhere. */
export function WindowCommands() {
  const { theme, size } = useBenchSettings();
  useCommand('help.keys', () => togglePanel('keys'));
  useCommand('bench.open', () => togglePanel('bench'));
  useCommand('card.open', () => togglePanel('cards'));
  useCommand('place.back', goBack);
  useCommand('place.forward', goForward);
  useCommand('floor.open', () => go({ name: 'floor' }));
  useCommand('setup.open', () => go({ name: 'setup' }));
  useCommand('machine.new', () => go({ name: 'take-in' }));
  useCommand('find.open', openSearch);
  useCommand('theme.next', () => changeBenchSettings({ theme: nextOf(themes, theme) }));
  useCommand('size.next', () => changeBenchSettings({ size: nextOf(sizes, size) }));
  return null;
}
