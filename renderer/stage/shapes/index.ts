import type { ComponentType } from 'react';
import type { ShapeName } from '../../../shared-lib/model/mark.ts';
import { AreaShape } from './area/Shape.tsx';
import { ArrowShape } from './arrow/Shape.tsx';
import { LineShape } from './line/Shape.tsx';
import { PathShape } from './path/Shape.tsx';
import { PointShape } from './point/Shape.tsx';
import type { ShapeProps } from './shape-props.ts';
import { SpanShape } from './span/Shape.tsx';

export const shapes: Record<ShapeName, ComponentType<ShapeProps>> = {
  point: PointShape,
  line: LineShape,
  path: PathShape,
  area: AreaShape,
  arrow: ArrowShape,
  span: SpanShape,
};
