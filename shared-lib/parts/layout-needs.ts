import type { Layout } from '../model/layout.ts';
import type { Component, LayoutNeed } from './component.ts';

const needs: Record<LayoutNeed, { readonly met: (layout: Layout) => boolean; readonly otherwise: string }> = {
  'liquid-cooled': {
    met: ({ engine }) => engine.cooling === 'liquid',
    otherwise: 'the engine has no coolant',
  },
  'liquid-or-oil-cooled': {
    met: ({ engine }) => engine.cooling !== 'air',
    otherwise: 'the engine is cooled by air alone',
  },
  liner: {
    met: ({ engine }) => engine.liner !== 'parent',
    otherwise: 'the engine has no liners, its bores are cut in the block',
  },
  'wet-liner': {
    met: ({ engine }) => engine.liner === 'wet' || engine.liner === 'unknown',
    otherwise: 'the engine has no wet liners',
  },
  'no-wet-liner': {
    met: ({ engine }) => engine.liner !== 'wet',
    otherwise: 'the bores of this engine are its wet liners',
  },
  diesel: {
    met: ({ engine }) => engine.fuel === 'diesel',
    otherwise: 'the engine is not a diesel',
  },
  spark: {
    met: ({ engine }) => engine.fuel !== 'diesel',
    otherwise: 'a diesel has no spark and no mixture',
  },
  injected: {
    met: ({ engine }) => engine.fuel === 'diesel' || engine.fuel === 'petrol',
    otherwise: 'a gas engine has no injectors',
  },
  'gas-fuel': {
    met: ({ engine }) => engine.fuel === 'LPG' || engine.fuel === 'gas',
    otherwise: 'the engine does not run on gas',
  },
};

/** Why a component can't be on a layout, in the mechanic's words; null where it can. */
export function missingNeed(component: Component, layout: Layout): string | null {
  const missing = component.needs?.find((need) => !needs[need].met(layout));
  return missing === undefined ? null : needs[missing].otherwise;
}

/**
 * Whether a component is offered on a layout: it can exist there, and the machine is of the kind that has it.
 */
export function isOffered(component: Component, layout: Layout): boolean {
  const still = layout.stationary === true && component.mobile === true;
  const rigid = layout.articulated !== true && (component.classes ?? []).includes('articulation');
  return missingNeed(component, layout) === null && !still && !rigid;
}
