/** The names of what crosses between the preload and the shell. */
export const channels = {
  call: 'witness:call',
  offer: 'witness:offer',
  event: 'witness:event',
} as const;
