import { roughMeasure, type Measure } from '../../charts/measure.ts';

const brush = document.createElement('canvas').getContext('2d');

/** Widths in the page's own font, px. */
export const pageMeasure: Measure = (text, size, bold = false) => {
  if (!brush) return roughMeasure(text, size, bold);
  brush.font = `${bold ? '650' : '400'} ${String(size)}px 'Source Sans 3 Variable', 'Segoe UI', sans-serif`;
  return brush.measureText(text).width;
};
