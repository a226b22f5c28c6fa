/** One system call of a trace, with the lines of the trace on which it began and ended. */
export interface SystemCall {
  readonly text: string;
  readonly begunAt: number;
  readonly endedAt: number;
}

/** The calls of a trace that came to an end without an error, whichever thread made them, in the order they began. */
export const callsIn = (trace: string): SystemCall[] => {
  const begun = new Map<string, { text: string; begunAt: number }>();
  const ended: SystemCall[] = [];
  trace.split('\n').forEach((line, at) => {
    const [, thread = '', call = ''] = /^(\d+)\s+(.*)$/.exec(line) ?? [];
    const [, resumed] = /^<\.\.\. \w+ resumed>(.*)$/.exec(call) ?? [];
    const earlier = begun.get(thread);
    if (call.endsWith('<unfinished ...>')) {
      begun.set(thread, { text: call.slice(0, -'<unfinished ...>'.length), begunAt: at });
    } else if (resumed !== undefined && earlier) {
      ended.push({ text: `${earlier.text}${resumed}`, begunAt: earlier.begunAt, endedAt: at });
    } else if (call !== '') ended.push({ text: call, begunAt: at, endedAt: at });
  });
  return ended.filter(({ text }) => / = \d+$/.test(text)).sort((a, b) => a.begunAt - b.begunAt);
};

/**
 * Finds calls one after the other: each begins after the one before it has ended.
 *
 * @throws Error naming the first that is not there
 */
export const inOrder = (
  calls: readonly SystemCall[],
  ...wanted: readonly (readonly [what: string, is: RegExp])[]
): SystemCall[] => {
  let after = -1;
  return wanted.map(([what, is]) => {
    const found = calls.find(({ text, begunAt }) => begunAt > after && is.test(text));
    if (!found) throw new Error(`no ${what} where one was expected`);
    after = found.endedAt;
    return found;
  });
};
