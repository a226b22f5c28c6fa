import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import type { Layout } from '../../../shared-lib/model/layout.ts';
import type { RecorderChild } from '../../recorder/durability/recorder-child.ts';
import { loaderLayout } from '../../support/loader-layout.ts';

const layout: Layout = {
  ...loaderLayout,
  engine: { ...loaderLayout.engine, cylinders: 6 },
  hydraulics: ['boom'],
  volts: 24,
};

/** Each of its own colours and grain, so that every one is a photo of its own and compresses like one. */
const photo = async (path: string, seed: number): Promise<void> => {
  const jpeg = await sharp({
    create: {
      width: 1600,
      height: 1200,
      channels: 3,
      background: { r: (seed * 37) % 200, g: 90, b: (seed * 91) % 200 },
      noise: { type: 'gaussian', mean: 120, sigma: 12 },
    },
  })
    .jpeg({ quality: 80 })
    .toBuffer();
  writeFileSync(path, jpeg);
};

/** A visit whose report is long: every finding has photos of its own, the first with a mark. */
export const makeLongVisit = async (
  child: RecorderChild,
  folder: string,
  findings: number,
  photosEach = 1,
): Promise<string> => {
  const page = await child.call('machine.add', { plate: { kind: 'crane', serial: 'BN LONG' }, layout });
  const { visit } = await child.call('visit.open', { machineId: page.machine.id, date: '2026-05-11' });
  const tokens: string[] = [];
  for (let number = 0; number < findings * photosEach; number += 1) {
    const path = join(folder, `${number}.jpg`);
    await photo(path, number);
    child.send({ kind: 'offer', offer: { token: `photo ${number}`, path, for: 'read' } });
    tokens.push(`photo ${number}`);
  }
  await child.call('shot.take', { visitId: visit.id, tokens });
  await child.event((event) => event.event === 'import' && event.ended !== 'no');
  const { shots } = await child.call('visit.get', { id: visit.id });
  for (let index = 0; index < findings; index += 1) {
    const [shot, ...others] = shots.slice(index * photosEach, (index + 1) * photosEach);
    if (shot === undefined) throw new Error('a photo was not taken in');
    const mark = await child.call('mark.add', {
      shotId: shot.id,
      shape: 'line',
      points: [
        { x: 500, y: 600 },
        { x: 900, y: 640 },
      ],
    });
    const finding = await child.call('finding.add', {
      visitId: visit.id,
      kind: 'condition',
      defect: 'crack',
      locations: [`ENG/LNR.${1 + (index % 6)}`],
      words: `entry ${index}: seen when the liner was drawn, and looked at again under a stronger light`,
      ifLeft: 'it grows until the coolant reaches the oil',
      watchFor: 'oil that turns grey, a level that falls',
      urgency: 2,
      runWorse: true,
      damageClass: 2,
      safety: 'none',
      markId: mark.id,
    });
    for (const other of others) await child.call('finding.showBy', { findingId: finding.id, shotId: other.id });
  }
  return visit.id;
};
