/** A decoding child that behaves as the name of the file it is given says: hangs, bloats or crashes. */
process.on('message', ({ job }: { job: { path: string } }) => {
  if (job.path.includes('crash')) process.kill(process.pid, 'SIGSEGV');
  if (job.path.includes('bloat')) {
    const hoard: Buffer[] = [];
    setInterval(() => hoard.push(Buffer.alloc(20_000_000, 1)), 5);
  }
  // Whatever else: busy for ever, as a decoder in a loop is.
  if (job.path.includes('hang')) for (;;) Math.random();
});
process.send?.({ kind: 'ready' });
