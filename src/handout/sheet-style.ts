import type { Paper } from './choices.ts';
import { COLUMNS, margins, PAPERS, roomMm, TYPE } from './fit.ts';
import { LOOK, SANS, SERIF } from './look.ts';

const em = (px: number): string => `${String(Math.round((px / TYPE.base) * 10000) / 10000)}em`;
/** For parts that have a font size of their own: their line height in it. */
const line = ({ size, line: height }: { readonly size: number; readonly line: number }): string => String(Math.round((height / size) * 1000) / 1000);
const font = (part: { readonly size: number; readonly line: number }): string => `font-size:${em(part.size)};line-height:${line(part)};`;

/** The sheet of paper that a printer is asked for. */
export const pageRule = (paper: Paper): string => `@page{size:${PAPERS[paper].name} portrait;margin:${margins}}`;

/** Widths at which the sheet on a screen becomes one column with a picture for phones, px. */
const PHONE = 799;
/** Below it a phone is too narrow for the picture of most phones, px: its room, and the sheet’s two sides. */
const LEAST = 349;
const MM = 96 / 25.4;

/**
 * Style of the sheet. Every length is a multiple of its one font size, so on a screen the whole sheet grows with its frame as one picture;
 * on paper it has the size that it was fitted at.
 */
export function sheetStyle(paper: Paper): string {
  const { widthMm, heightMm } = PAPERS[paper];
  const side = 15 * MM;
  const ends = 12 * MM;
  const across = Math.round((widthMm * MM * 1000) / TYPE.base) / 1000;
  return `
.frame{container-type:inline-size;background:none}
.sheet{box-sizing:border-box;margin:0 auto;background:${LOOK.paper};color:${LOOK.ink};font-family:${SANS};font-variant-numeric:tabular-nums lining-nums;font-size:clamp(${String(TYPE.base)}px,calc(100cqi/${String(across)}),16.7px);line-height:1.28;width:${em(widthMm * MM)};min-height:${em(heightMm * MM)};padding:${em(ends)} ${em(side)};display:flex;flex-direction:column;text-align:left;-webkit-text-size-adjust:100%;text-size-adjust:100%}
.sheet *{box-sizing:border-box}
.sheet p,.sheet h1,.sheet h2,.sheet ul,.sheet table{margin:0;padding:0}
.sheet h1,.sheet h2,.sheet .bar strong{font-family:${SERIF};color:inherit;max-width:none}
.sheet b,.sheet strong{font-weight:650}
.sheet .quiet{color:${LOOK.ink2}}
.sheet .bar{display:flex;justify-content:space-between;align-items:baseline;gap:${em(18)};height:${em(TYPE.bar)};border-bottom:${em(1.6)} solid ${LOOK.ink};flex:none;white-space:nowrap}
.sheet .bar strong{flex:none;max-width:66%;font-size:${em(15)};font-weight:650;overflow:hidden;text-overflow:ellipsis}
.sheet .bar span{min-width:0;overflow:hidden;text-overflow:ellipsis;font-size:${em(12)};color:${LOOK.ink2}}
.sheet h1{${font(TYPE.headline)}font-weight:500;margin-top:${em(TYPE.headline.before / 1.92)};text-wrap:pretty}
.sheet h1 span{display:block}
.sheet h1 b{font-weight:700}
.sheet .lede{${font(TYPE.lede)}margin-top:${em(TYPE.lede.before)}}
.sheet .hard{font-size:${em(12.5)};line-height:1.36;margin-top:${em(4)}}
.sheet .picture{margin-top:${em(TYPE.gap)};flex:none}
.sheet .picture svg{display:block;width:100%;height:auto;overflow:visible}
.sheet .picture .phone,.sheet .picture .least{display:none}
.sheet .key{${font(TYPE.small)}color:${LOOK.ink2};margin-top:${em(4)}}
.sheet .middle{display:grid;grid-template-columns:${String(COLUMNS.left)}fr ${String(1 - COLUMNS.left)}fr;gap:0 ${em(COLUMNS.gap)};margin-top:${em(TYPE.gap)};flex:1 1 auto;min-height:0}
.sheet .middle>div{min-width:0}
.sheet h2{font-size:${em(15.5)};line-height:1.2;font-weight:600;height:auto;padding-bottom:${em(4)};border-bottom:1px solid ${LOOK.ink};text-wrap:wrap;overflow-wrap:anywhere}
.sheet table{width:100%;border-collapse:collapse;${font(TYPE.body)}}
.sheet th,.sheet td{text-align:left;vertical-align:top;padding:${em(2)} ${em(8)} ${em(2)} 0;border:0;border-bottom:1px solid ${LOOK.hair};font-weight:400;overflow-wrap:anywhere}
.sheet td:last-child{padding-right:0}
.sheet .asks th{width:${em(COLUMNS.when)};font-weight:600}
.sheet .rests td:last-child{width:${em(74)};white-space:nowrap;text-align:right}
.sheet .more,.sheet .more td{color:${LOOK.ink2};border:0}
.sheet .rests li{align-items:baseline;padding:${em(2)} 0;border-bottom:1px solid ${LOOK.hair};gap:${em(8)}}
.sheet .rests .label{flex:1 1 auto;min-width:0;overflow-wrap:anywhere}
.sheet .rests .value{flex:none;white-space:nowrap}
.sheet .rests .rank{flex:none;width:${em(68)};white-space:nowrap}
.sheet sup{font-size:0.8em;line-height:0;vertical-align:0.35em;font-weight:400}
.sheet .tally{${font(TYPE.small)}color:${LOOK.ink2};margin-top:${em(TYPE.gap)};overflow-wrap:anywhere}
.sheet .nothing{${font(TYPE.body)}font-weight:600;margin-top:${em(4)}}
.sheet .dots{display:block;width:100%;max-width:${em(260)};height:auto;margin:${em(4)} 0 ${em(2)}}
.sheet ul{list-style:none;${font(TYPE.body)}}
.sheet li{display:flex;align-items:center;gap:${em(6)}}
.sheet li svg{flex:none;width:${em(11)};height:${em(11)}}
.sheet .second{margin-top:${em(TYPE.gap)}}
.sheet .badge{display:inline-block;font-size:${em(12)};line-height:1.15;padding:0 ${em(4)} ${em(0.5)};border:1px solid ${LOOK.ink};border-radius:2px;white-space:nowrap}
.sheet .badge.own{background:${LOOK.ink};color:${LOOK.paper};print-color-adjust:exact;-webkit-print-color-adjust:exact}
.sheet .badge.weak{border-style:dashed;border-color:${LOOK.edge}}
.sheet .care{${font(TYPE.small)}margin-top:${em(TYPE.gap)};padding-top:${em(4)};border-top:1px solid ${LOOK.rule};flex:none}
.sheet .foot{${font(TYPE.small)}margin-top:${em(TYPE.gap - 4)};padding-top:${em(4)};border-top:1px solid ${LOOK.ink};color:${LOOK.ink2};flex:none;overflow-wrap:anywhere}
.sheet a{color:${LOOK.ink};text-decoration-thickness:1px;text-underline-offset:2px}
@media screen{@container (max-width:${String(PHONE)}px){
.sheet{width:auto;min-height:0;font-size:16.5px;padding:20px 16px 24px}
.sheet .bar{display:block;height:auto;padding-bottom:8px;white-space:normal}
.sheet .bar strong{display:block;max-width:none;white-space:normal;overflow-wrap:anywhere;font-size:18px}
.sheet .bar span,.sheet .badge,.sheet sup{font-size:16px}
.sheet h1{font-size:26px;line-height:1.22;margin-top:16px}
.sheet .lede{font-size:17px;line-height:1.5;margin-top:12px}
.sheet .hard,.sheet .key,.sheet .tally,.sheet .care,.sheet .foot,.sheet table,.sheet ul,.sheet .nothing{font-size:16px;line-height:1.45}
.sheet h2{font-size:21px}
.sheet .badge{line-height:1.3}
.sheet .picture .wide{display:none}
.sheet .picture .phone{display:block;max-width:420px}
.sheet .middle{display:block;margin-top:24px}
.sheet .middle>div+div,.sheet .second{margin-top:26px}
.sheet .asks th,.sheet .asks td{display:block;width:auto;border:0;padding:0}
.sheet .asks tr{display:block;padding:8px 0;border-bottom:1px solid ${LOOK.hair}}
.sheet .rests li{padding:8px 0}
.sheet .rests .value{flex:0 1 40%;white-space:normal}
.sheet .rests .rank{width:88px}
.sheet .foot a{display:inline-block;padding:10px 0}
}
@container (max-width:${String(LEAST)}px){
.sheet .picture .phone{display:none}
.sheet .picture .least{display:block}
}}
@media print{
.frame{container-type:normal}
.sheet{font-size:${String(TYPE.base)}px;width:auto;min-height:0;height:calc(${String(Math.round(roomMm(paper) * 100) / 100)}mm - 1px);padding:0;overflow:hidden;margin:0}
.sheet .middle{overflow:hidden}
}
`;
}
