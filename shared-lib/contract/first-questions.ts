/** A large shop's floor opens as fast as a small one's; the rest is one press, or a word in the search, away. */
export const machinesAtFirst = 60;

/** What the window asks first; the shell asks it while the window is still being made. */
export const firstQuestions: readonly { readonly name: string; readonly input: unknown }[] = [
  { name: 'app.state', input: {} },
  { name: 'machine.floor', input: { most: machinesAtFirst } },
];
