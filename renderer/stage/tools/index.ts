import type { ShapeName } from '../../../shared-lib/model/mark.ts';
import { areaMachine } from './area/machine.ts';
import { arrowMachine } from './arrow/machine.ts';
import { growMachine } from './grow/machine.ts';
import { lineMachine } from './line/machine.ts';
import { type Session, startSession } from './machine.ts';
import { pathMachine } from './path/machine.ts';
import { pickMachine } from './pick/machine.ts';
import { pointMachine } from './point/machine.ts';
import { spanMachine } from './span/machine.ts';
import { traceMachine } from './trace/machine.ts';

export type ToolName = 'pick' | ShapeName | 'trace' | 'grow';

export interface Tool {
  readonly name: ToolName;
  /** As it stands under its icon. */
  readonly word: string;
  /** One capital letter. */
  readonly key: string;
  /** How to use it, in a few words. */
  readonly hint: string;
  /** Lines of a 32 x 32 drawing, as SVG path data; `dot` is filled. */
  readonly icon: { readonly lines: string; readonly dot?: string };
  readonly start: () => Session;
}

/** In the order of the rail. */
export const tools: readonly Tool[] = [
  {
    name: 'pick',
    word: 'Pick',
    key: 'V',
    hint: 'Tap a mark to pick it; drag its points, its line or its tag.',
    icon: { lines: 'M9 4.5V25l5.4-5 3.5 8 3.8-1.7-3.5-7.8 7.3-.5z' },
    start: () => startSession(pickMachine),
  },
  {
    name: 'point',
    word: 'Point',
    key: 'P',
    hint: 'Press, slide to the spot, let go.',
    icon: { lines: 'M16 3v8M16 21v8M3 16h8M21 16h8', dot: 'M11.5 16a4.5 4.5 0 1 0 9 0a4.5 4.5 0 1 0 -9 0z' },
    start: () => startSession(pointMachine),
  },
  {
    name: 'line',
    word: 'Line',
    key: 'L',
    hint: 'Pull from end to end, or tap both ends.',
    icon: { lines: 'M5 26 27 7' },
    start: () => startSession(lineMachine),
  },
  {
    name: 'path',
    word: 'Path',
    key: 'K',
    hint: 'Tap along the crack; tap the last point twice, or Enter, to end. Or draw it in one pull.',
    icon: { lines: 'M5 26 13 14l6 6L27 6' },
    start: () => startSession(pathMachine),
  },
  {
    name: 'trace',
    word: 'Trace',
    key: 'T',
    hint: 'Tap where the crack begins and where it ends, or run roughly along it; the line between is followed.',
    icon: {
      lines: 'M4 25c3-2 3-6 6-7s4 2 6-1 1-6 5-7 4-1 7-5',
      dot: 'M1.5 26a3 3 0 1 0 6 0a3 3 0 1 0-6 0zM25 5a3 3 0 1 0 6 0a3 3 0 1 0-6 0z',
    },
    start: () => startSession(traceMachine),
  },
  {
    name: 'area',
    word: 'Area',
    key: 'A',
    hint: 'Draw round it in one pull, or tap its corners and then the first one again.',
    icon: {
      lines:
        'M11 5.5C17 4 24 4 26.5 8.5c2 4 2 10-1 15C22 27.5 13 28 9 26.5 4.500 24 3.500 19 5 14c1-4 2.500-7.500 6-8.500z',
    },
    start: () => startSession(areaMachine),
  },
  {
    name: 'grow',
    word: 'Grow',
    key: 'G',
    hint: 'Run a line over the patch, or tap a spot inside; its outline is found.',
    icon: {
      lines:
        'M9 9c3-4 12-4 15 0s3 11-1 14-11 3-14-1-3-9 0-13zM16 10.500V4M16 21.500V28M10.500 16H4M21.500 16H28M13.500 6.500 16 4l2.500 2.500M13.500 25.500 16 28l2.500-2.500',
      dot: 'M14 16a2 2 0 1 0 4 0a2 2 0 1 0-4 0z',
    },
    start: () => startSession(growMachine),
  },
  {
    name: 'arrow',
    word: 'Arrow',
    key: 'R',
    hint: 'Pull towards what it points at.',
    icon: { lines: 'M5 27 27 5M13 5h14v14' },
    start: () => startSession(arrowMachine),
  },
  {
    name: 'span',
    word: 'Span',
    key: 'S',
    hint: 'Pull from edge to edge of what is measured.',
    icon: { lines: 'M4 7v18M28 7v18M7 16h18M12 10.500 6.500 16l5.500 5.500M20 10.500 25.500 16 20 21.500' },
    start: () => startSession(spanMachine),
  },
];

export function toolNamed(name: ToolName): Tool {
  const tool = tools.find((candidate) => candidate.name === name);
  if (!tool) throw new Error(`No tool is named ${name}.`);
  return tool;
}
