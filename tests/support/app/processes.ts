import { readdirSync, readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';

const patienceMs = 10_000;
const stepMs = 25;

/** Asks again and again until there is an answer; the error says what was waited for. */
export async function until<T>(what: string, ask: () => T | undefined): Promise<T> {
  const deadline = Date.now() + patienceMs;
  for (;;) {
    const answer = ask();
    if (answer !== undefined) return answer;
    if (Date.now() > deadline) throw new Error(`Waited ${patienceMs / 1000} s in vain until ${what}.`);
    await pause(stepMs);
  }
}

/** A zombie is dead: only its parent has not looked yet. */
export function isAlive(pid: number): boolean {
  const state = statOf(pid)?.state;
  return state !== undefined && state !== 'Z';
}

/** The recorder that this shell forked, found by what the system says of its processes. */
export function recorderOf(shell: number | undefined): number | undefined {
  return readdirSync('/proc')
    .map(Number)
    .find(
      (pid) =>
        pid > 0 && statOf(pid)?.parent === shell && commandOf(pid).includes('dist/recorder/main.js') && isAlive(pid),
    );
}

function statOf(pid: number): { state: string; parent: number } | undefined {
  // The name stands in brackets and may itself hold spaces and brackets.
  const [state, parent] = (read(pid, 'stat') ?? '').replace(/^.*\) /s, '').split(' ');
  return state ? { state, parent: Number(parent) } : undefined;
}

const commandOf = (pid: number) => read(pid, 'cmdline') ?? '';

function read(pid: number, name: string): string | undefined {
  try {
    return readFileSync(`/proc/${pid}/${name}`, 'utf8');
  } catch {
    // It ended between the listing and the look.
    return undefined;
  }
}
