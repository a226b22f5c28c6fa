import { describe, expect, it } from 'vitest';
import { commandPlaces, commands, commandsOfKey, keyName } from '../../../../renderer/app/commands.ts';

const press = (key: string, held: Partial<Record<'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey', boolean>> = {}) => ({
  key,
  ctrlKey: false,
  metaKey: false,
  shiftKey: false,
  altKey: false,
  ...held,
});

describe('keys have one name', () => {
  it.each([
    [press('n'), 'N'],
    [press('N', { shiftKey: true }), 'N'],
    [press('?', { shiftKey: true }), '?'],
    [press('z', { ctrlKey: true }), 'Ctrl+Z'],
    [press('Z', { ctrlKey: true, shiftKey: true }), 'Ctrl+Shift+Z'],
    [press('z', { metaKey: true }), 'Ctrl+Z'],
    [press('ArrowLeft', { altKey: true }), 'Alt+ArrowLeft'],
    [press('Tab', { shiftKey: true }), 'Shift+Tab'],
    [press('å'), 'Å'],
  ])('%j is %s', (event, name) => {
    expect(keyName(event)).toBe(name);
  });
});

describe('the list of commands', () => {
  it('names each command once', () => {
    expect(new Set(commands.map(({ id }) => id)).size).toBe(commands.length);
  });

  it.each(commandPlaces)('gives no key twice where both would be answered: %s', (place) => {
    const heard = commands.filter(({ where }) => where === place || where === 'everywhere');
    const keys = heard.map(({ key }) => key);
    expect(keys.filter((key, at) => keys.indexOf(key) !== at)).toEqual([]);
  });

  it('finds a command by its key', () => {
    expect(commandsOfKey('Ctrl+Z')).toEqual(['edit.undo']);
    expect(commandsOfKey('Ctrl+Q')).toEqual([]);
  });

  it('writes every key as a keyboard event would name it', () => {
    for (const { key } of commands) {
      const parts = key.split('+');
      const main = parts.at(-1) ?? '';
      expect(['Ctrl', 'Alt', 'Shift']).toEqual(expect.arrayContaining(parts.slice(0, -1)));
      expect(main).toMatch(/^(\p{Lu}|[^\p{L}]|[A-Z][A-Za-z]+)$/u);
    }
  });
});
