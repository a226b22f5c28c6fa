import { resolve } from 'node:path';
import type { Command } from 'commander';
import { Measurer } from '../../recorder/measuring/measurer.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';

export const addRegister = (program: Command): void => {
  program
    .command('register')
    .description('lays an earlier photo of a part over a later one; that they have nothing in common is an answer')
    .argument('<earlier>', 'a photo')
    .argument('<later>', 'a later photo of the same part')
    .option('--json', 'as JSON', false)
    .action((earlier: string, later: string, { json }: { json: boolean }) =>
      run(json, async () => {
        const measurer = new Measurer();
        try {
          const { suggestion } = await measurer.run({
            kind: 'register',
            path: resolve(earlier),
            laterPath: resolve(later),
          });
          answer(
            json,
            suggestion,
            suggestion.state === 'registered'
              ? [
                  `${suggestion.pairs.length} places found in both, ${suggestion.rmsPx.toFixed(1)} px apart once laid over each other`,
                ]
              : ['These two photos have nothing in common that could be found.'],
          );
          return exitCodes.done;
        } finally {
          measurer.close();
        }
      }),
    );
};
