import { useEffect, useEffectEvent } from 'react';
import { type CommandId, commands, commandsOfKey, keyName } from './commands.ts';

type Answer = () => void;

/** Who answers a command now; the one mounted last comes first. */
const answers = new Map<CommandId, Answer[]>();

/** Answers a command as long as the screen stands and `when` holds. */
export function useCommand(id: CommandId, answer: Answer, when = true): void {
  const handle = useEffectEvent(answer);
  useEffect(() => {
    if (!when) return;
    const own: Answer = () => handle();
    answers.set(id, [own, ...(answers.get(id) ?? [])]);
    return () => {
      answers.set(
        id,
        (answers.get(id) ?? []).filter((other) => other !== own),
      );
    };
  }, [id, when]);
}

/** Runs a command by name; false when nobody answers it here. */
export function runCommand(name: string): boolean {
  const id = commands.find((command) => command.id === name)?.id;
  const answer = id === undefined ? undefined : answers.get(id)?.[0];
  answer?.();
  return answer !== undefined;
}

/** Commands that somebody answers at this moment. */
export function isAnswered(id: CommandId): boolean {
  return (answers.get(id)?.length ?? 0) > 0;
}

const typed = new WeakMap<EventTarget, string>();
const textTypes = new Set(['text', 'search', 'tel', 'email', 'url', 'password', 'number', 'date', 'time']);

type TextField = HTMLInputElement | HTMLTextAreaElement;

function asTextField(target: EventTarget | null): TextField | null {
  if (target instanceof HTMLTextAreaElement) return target;
  if (target instanceof HTMLInputElement && textTypes.has(target.type)) return target;
  return null;
}

/** Keys that a control uses for itself. */
function isOwnKey(target: EventTarget | null, name: string): boolean {
  if (!(target instanceof Element)) return false;
  if (name === 'Enter' || name === ' ') return target.closest('button, a, [role=button], summary') !== null;
  if (name.startsWith('Arrow')) {
    return target.closest('input, select, [role=slider], [role=listbox], [role=tablist], [data-own-arrows]') !== null;
  }
  return false;
}

function handleFocusIn(event: FocusEvent): void {
  const field = asTextField(event.target);
  if (field !== null) typed.set(field, field.value);
}

function handleKeyDown(event: KeyboardEvent): void {
  if (event.defaultPrevented || event.isComposing) return;
  const name = keyName(event);
  const field = asTextField(event.target);
  if (field !== null) {
    if (!event.ctrlKey && !event.metaKey && !event.altKey) return;
    // While there is typing to take back in the field itself, that comes first.
    const isUndo = name === 'Ctrl+Z' || name === 'Ctrl+Shift+Z';
    if (isUndo && typed.get(field) !== field.value) return;
  }
  if (isOwnKey(event.target, name)) return;
  if (commandsOfKey(name).some(runCommand)) event.preventDefault();
}

/** Hears the keys for the whole window. Returns the way to stop. */
export function listenToKeys(): () => void {
  window.addEventListener('focusin', handleFocusIn);
  window.addEventListener('keydown', handleKeyDown);
  return () => {
    window.removeEventListener('focusin', handleFocusIn);
    window.removeEventListener('keydown', handleKeyDown);
  };
}
