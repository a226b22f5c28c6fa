import { describe, expect, it } from 'vitest';
import {
  firstTrail,
  gone,
  lastPlaceOf,
  type Place,
  pageOf,
  replaced,
  wentBack,
  wentForward,
} from '../../../../renderer/app/place.ts';

const machine: Place = { name: 'machine', machineId: 'm' };
const page: Place = { name: 'visit', visitId: 'v', page: 'page' };
const photos: Place = { name: 'visit', visitId: 'v', page: 'photos', shotId: 's1' };

describe('the way through the places', () => {
  it('goes back the way it came, and forward again', () => {
    const there = gone(gone(firstTrail, machine), page);
    const back = wentBack(there);
    expect(back.here).toEqual(machine);
    expect(wentBack(back).here).toEqual({ name: 'floor' });
    expect(wentForward(back)).toEqual(there);
  });

  it('does not go further back than the start', () => {
    expect(wentBack(firstTrail)).toBe(firstTrail);
    expect(wentForward(firstTrail)).toBe(firstTrail);
  });

  it('takes no step to where one stands', () => {
    const there = gone(firstTrail, machine);
    expect(gone(there, { ...machine })).toBe(there);
  });

  it('forgets the way forward when it turns off', () => {
    const back = wentBack(gone(gone(firstTrail, machine), page));
    expect(gone(back, photos).forward).toEqual([]);
  });

  it('shows the next photo without a step on the way back', () => {
    const there = gone(gone(firstTrail, machine), photos);
    const next = replaced(there, { ...photos, shotId: 's2' });
    expect(next.here).toMatchObject({ shotId: 's2' });
    expect(wentBack(next).here).toEqual(machine);
  });

  it('goes on with a visit where one was last in it', () => {
    const trail = gone(gone(gone(gone(firstTrail, page), photos), machine), { name: 'floor' });
    expect(lastPlaceOf('v', trail)).toEqual(photos);
    expect(lastPlaceOf('other', trail)).toEqual({ name: 'visit', visitId: 'other', page: 'page' });
  });

  it('turns to the photos of a visit at the one that was on the stage last, with no card open', () => {
    const trail = gone(replaced(gone(firstTrail, photos), { ...photos, shotId: 's2', findingId: 'f' }), page);
    expect(pageOf('v', 'photos', trail)).toEqual({ ...photos, shotId: 's2' });
    expect(pageOf('v', 'report', trail)).toEqual({ ...page, page: 'report' });
    expect(pageOf('other', 'photos', trail)).toEqual({ name: 'visit', visitId: 'other', page: 'photos' });
  });

  it('remembers a hundred steps and no more', () => {
    let trail = firstTrail;
    for (let step = 0; step < 250; step++) trail = gone(trail, { name: 'machine', machineId: String(step) });
    expect(trail.back).toHaveLength(100);
    expect(trail.back[0]).toEqual({ name: 'machine', machineId: '149' });
  });
});
