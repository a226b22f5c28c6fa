import type { UnitSystem } from '../../quantities/units.ts';
import type { SheetPicture } from '../../sheets/sheet-kind.ts';
import { barsPlot } from './bars-plot.ts';
import { borePlot } from './bore-plot.ts';
import type { Plot } from './plot.ts';
import { surfacePlot } from './surface-plot.ts';
import { trendPlot } from './trend-plot.ts';

/** A sheet's picture as it is drawn; null where there is too little to draw. */
export function plotOf(picture: SheetPicture | null, system: UnitSystem): Plot | null {
  switch (picture?.kind) {
    case 'bore':
      return borePlot(picture, system);
    case 'surface':
      return surfacePlot(picture, system);
    case 'bars':
      return barsPlot(picture, system);
    case 'trend':
      return trendPlot(picture, system);
    default:
      return null;
  }
}
