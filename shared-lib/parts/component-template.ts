import type { Component } from './component.ts';
import { cooling } from './template/cooling.ts';
import { electrics } from './template/electrics.ts';
import { engine } from './template/engine/engine.ts';
import { frame, protection } from './template/frame-and-protection.ts';
import { fuel } from './template/fuel.ts';
import { hydraulics } from './template/hydraulics.ts';
import { instruments } from './template/instruments.ts';
import { brakes, driveline, steering } from './template/running-gear.ts';

/**
 * The whole component tree, in tree order: the order findings of equal weight stand in.
 *
 * Source: the handbook's component tree (2.1). The codes are the program's own; the names are the trade's plain words.
 */
export const componentTemplate: readonly Component[] = [
  engine,
  cooling,
  fuel,
  electrics,
  instruments,
  hydraulics,
  steering,
  brakes,
  driveline,
  frame,
  protection,
];
