import { readFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import type { Command } from 'commander';
import { z } from 'zod';
import { CalibrationInput, MeasuredShape } from '../../../shared-lib/calibration/input.ts';
import { measureInPixels, measureShape } from '../../../shared-lib/calibration/measure.ts';
import { mapPlane } from '../../../shared-lib/calibration/plane-mapping.ts';
import { AppError } from '../../../shared-lib/contract/errors.ts';
import { answer, run } from '../answer.ts';
import { exitCodes } from '../exit-codes.ts';

const Job = z.strictObject({
  calibration: CalibrationInput.nullable().default(null),
  shapes: z.array(MeasuredShape).max(1000),
});

const readJob = (text: string): z.infer<typeof Job> => {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (cause) {
    throw new AppError('invalid-input', { issues: [{ path: '', message: 'this is no JSON' }] }, { cause });
  }
  const job = Job.safeParse(value);
  if (job.success) return job.data;
  throw new AppError('invalid-input', {
    issues: job.error.issues.map(({ path, message }) => ({ path: path.join('.'), message })),
  });
};

const textOf = async (json: string): Promise<string> => {
  if (!json.startsWith('@')) return json;
  const path = resolve(json.slice(1));
  return await readFile(path, 'utf8').catch((cause: unknown) => {
    throw new AppError(
      'file-unreadable',
      { path, reason: cause instanceof Error ? cause.message : String(cause) },
      { cause },
    );
  });
};

export const addMeasure = (program: Command): void => {
  program
    .command('measure')
    .description(
      'lengths, areas and angles of marks in a calibrated plane, each with its uncertainty (95 %, k = 2 where it is normal)',
    )
    .requiredOption('--json <job>', '{ "calibration": ..., "shapes": [...] }, or @file; answered as JSON')
    .action(({ json }: { json: string }) =>
      run(true, async () => {
        const { calibration, shapes } = readJob(await textOf(json));
        const mapping = calibration && mapPlane(calibration);
        const value = {
          calibration: mapping && {
            method: calibration.method,
            plane: calibration.plane,
            residualsPx: mapping.residualsPx,
            tiltDegrees: mapping.tilt === null ? null : (mapping.tilt * 180) / Math.PI,
          },
          coverage: '95 %, k = 2 where the errors are normal',
          shapes: shapes.map((shape) => (calibration ? measureShape(calibration, shape) : measureInPixels(shape))),
        };
        answer(true, value, []);
        return exitCodes.done;
      }),
    );
};
