import type { Component } from '../../component.ts';
import { air, exhaust } from './air-and-exhaust.ts';
import { block } from './block.ts';
import { crank } from './crankshaft.ts';
import { head, headGasket } from './cylinder-head.ts';
import { liner, piston, rod } from './cylinder-parts.ts';
import { lubrication } from './lubrication.ts';
import { valveTrain } from './valve-train.ts';

export const engine: Component = {
  code: 'ENG',
  name: 'engine',
  classes: ['engine'],
  clock: 'deck',
  silent: true,
  parts: [
    head,
    headGasket,
    block,
    liner,
    piston,
    {
      code: 'RING',
      name: 'piston ring',
      counting: { by: 'cylinder', within: 'ring' },
      ofCylinder: true,
      classes: ['engine-internal'],
    },
    {
      code: 'PIN',
      name: 'piston pin',
      counting: { by: 'cylinder' },
      ofCylinder: true,
      classes: ['engine-internal'],
      also: ['gudgeon pin', 'wrist pin'],
    },
    {
      code: 'CLIP',
      name: 'piston-pin clip',
      counting: { by: 'cylinder' },
      ofCylinder: true,
      classes: ['engine-internal'],
      also: ['circlip'],
    },
    {
      code: 'JET',
      name: 'piston-cooling jet',
      counting: { by: 'cylinder' },
      classes: ['engine-internal'],
      also: ['oil jet'],
    },
    rod,
    crank,
    valveTrain,
    lubrication,
    { code: 'BRE', name: 'breather', also: ['crankcase vent'] },
    air,
    exhaust,
  ],
};
