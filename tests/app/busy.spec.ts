import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Bridge } from '../../shared-lib/contract/bridge.ts';
import { expect, test } from '../support/app/fixture.ts';
import { loaderLayout } from '../support/loader-layout.ts';

const findings = 60;
const fewestSaves = 10;

test('what is written while a report is typeset is saved before the report is there', async ({ program, folder }) => {
  test.setTimeout(180_000);
  await program.call('app.begin', { with: 'empty' });
  const { machine } = await program.call('machine.add', {
    plate: { kind: 'crane', serial: 'BS 0001' },
    layout: loaderLayout,
  });
  const { visit } = await program.call('visit.open', { machineId: machine.id, date: '2026-05-11' });
  const ids: string[] = [];
  for (let number = 1; number <= findings; number += 1) {
    const finding = await program.call('finding.add', {
      visitId: visit.id,
      kind: 'condition',
      defect: 'crack',
      locations: [`ENG/LNR.${1 + (number % 4)}`],
      words: `entry ${number}, seen when the liner was drawn`,
      ifLeft: 'it grows until the coolant reaches the oil',
    });
    ids.push(finding.id);
  }

  const pdf = join(folder, 'long.pdf');
  await program.saveAs(pdf);
  const chosen = await program.call('shell.choosePdf', { suggestedName: 'long.pdf' });
  const { printMs, savesMs } = await program.page.evaluate(
    async ({ visitId, ids, token }) => {
      const { witness } = window as unknown as { witness: Bridge };
      const timed = async (name: string, input: unknown) => {
        const began = performance.now();
        const answer = await witness.call(name, input);
        if (!answer.ok) throw new Error(`${name}: ${answer.error.code}`);
        return performance.now() - began;
      };
      const savesMs: number[] = [];
      let isPrinting = true;
      const printing = timed('report.print', { visitId, token }).finally(() => {
        isPrinting = false;
      });
      while (isPrinting) {
        const id = ids[savesMs.length % ids.length];
        savesMs.push(await timed('finding.change', { id, words: `seen again, time ${savesMs.length}` }));
        await new Promise((resolve) => setTimeout(resolve, 10));
      }
      return { printMs: await printing, savesMs };
    },
    { visitId: visit.id, ids, token: chosen?.token ?? '' },
  );
  expect(savesMs.length).toBeGreaterThan(fewestSaves);
  // Typesetting is by far the most of it: had one save waited for that, it would have taken the most of it too.
  expect(Math.max(...savesMs)).toBeLessThan(printMs / 2);
  expect(readFileSync(pdf).subarray(0, 5).toString('latin1')).toBe('%PDF-');
  const record = await program.call('visit.get', { id: visit.id });
  const last = record.findings.find(({ id }) => id === ids[(savesMs.length - 1) % ids.length]);
  expect(last?.words).toBe(`seen again, time ${savesMs.length - 1}`);
});
