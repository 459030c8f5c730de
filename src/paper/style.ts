import type { PaperSize } from './page'
import { print } from './print'
import {
  barLength,
  columnGap,
  headAside,
  margin,
  pageHeight,
  proseWidth,
  sheets,
  textWidth,
} from './size'
import { dashWidth } from './stepRuns'

/** The paper that a page is printed on; margins in the file, so that the browser's print stands where it should. */
export const pageRule = (size: PaperSize): string =>
  `@page{size:${sheets[size].css} portrait;margin:${margin.along}mm ${margin.across}mm}`

/** Stacks beside each other take parts of 24 of the width; gaps come off all of them alike. */
const shares = Array.from({ length: 24 }, (_, i) => `.paper .w${i + 1}{flex:${i + 1} 1 0}`).join(
  '\n',
)

/**
 * How the sheet is inked: black on white, grey only for grids. Lengths are mm and points, so that
 * the bar at the foot of a page measures what it says. Pages are cut by the widths of Arial: where neither it nor its like is
 * there, the narrow cut of what usually is stands in, and every font is set so large that its small letters are as high.
 */
export const paperStyle = (size: PaperSize): string => `
.paper{color:#000;background:#fff;font-family:Arial,Helvetica,'Liberation Sans','Nimbus Sans',Arimo,'DejaVu Sans Condensed',sans-serif;font-size-adjust:.519;font-size:${print.plain}pt;line-height:${print.leading};font-variant-numeric:tabular-nums;text-align:left}
.paper *{box-sizing:border-box;margin:0;padding:0}
.paper .page{width:${textWidth}mm;min-height:${pageHeight(size)}mm;margin:0 auto;display:flex;flex-direction:column;break-after:page;position:relative}
.paper .page:last-child{break-after:auto}
.paper .page-head{border-bottom:.5mm solid #000;margin-bottom:3mm;padding-bottom:.8mm;display:flex;justify-content:space-between;align-items:flex-end;gap:6mm}
.paper .page-head h2{font-size:${print.title}pt;line-height:1.15;font-weight:700}
.paper .page-head p{font-size:${print.small}pt;text-align:right;max-width:${headAside}mm}
.paper h2.title{font-size:${print.title}pt;line-height:1.15;font-weight:700;margin:2mm 0 2mm;padding-bottom:.8mm;border-bottom:.5mm solid #000;break-after:avoid}
.paper .page-body{flex:1}
.paper .page-foot{border-top:.25mm solid #000;padding-top:1mm;display:flex;justify-content:space-between;gap:4mm;font-size:${print.small}pt;line-height:1.2}
.paper .page-foot .turn{text-align:right}
.paper .bar{display:block;width:${barLength}mm;height:2mm;margin-bottom:.4mm}
.paper .bar path{fill:none;stroke:#000;stroke-width:.35}
.paper .bar-note{width:${barLength}mm;text-align:center}
.paper h3{font-size:${print.heading}pt;line-height:${print.leading};margin:1.4mm 0 1mm;padding-bottom:.2mm;border-bottom:.25mm solid #000;break-after:avoid}
.paper h3 small{font-weight:400;font-size:${print.small}pt}
.paper p,.paper ul,.paper table,.paper .box,.paper .figures,.paper .blanks,.paper .feet{margin-bottom:${print.gap}mm}
.paper .page-foot p,.paper .page-head p,.paper .box p,.paper .card p,.paper figcaption p{margin-bottom:0}
.paper p.lead{font-size:${print.lead}pt;font-weight:700;line-height:${print.leading}}
.paper p.strong{font-size:${print.strong}pt;font-weight:600}
.paper p.small{font-size:${print.small}pt}
.paper p.sum{font-size:${print.sum}pt;padding-left:6mm}
.paper p.plain{max-width:${proseWidth(print.plain)}mm}
.paper p.small{max-width:${proseWidth(print.small)}mm}
.paper ul{list-style:none}
.paper li{max-width:${proseWidth(print.plain) + 6}mm;padding-left:6mm;position:relative;margin-bottom:.8mm;break-inside:avoid}
.paper .dash li::before{content:'\\2013';position:absolute;left:1.5mm}
.paper .tick li{max-width:none;min-height:${print.actual}mm;padding-left:${print.actual + 2}mm}
.paper .tick li::before{content:'';position:absolute;left:0;top:0;width:${print.actual}mm;height:${print.actual}mm;border:.3mm solid #000}
.paper .box{border:.7mm solid #000;padding:1.6mm 3mm 1.2mm;break-inside:avoid}
.paper .box ul{margin-bottom:0}
.paper .box b.title{font-size:${print.strong}pt;display:block}
.paper .box li::before{content:'\\2013';position:absolute;left:1.5mm}
.paper table{width:100%;border-collapse:collapse;table-layout:fixed}
.paper th,.paper td{text-align:left;vertical-align:top;padding:${print.cell.along}mm ${print.cell.across}mm;border-bottom:.2mm solid #000;overflow-wrap:anywhere}
.paper th{font-size:${print.small}pt;font-weight:600;border-bottom:.4mm solid #000;vertical-align:bottom}
.paper tr{break-inside:avoid}
.paper .firm{white-space:nowrap}
.paper .right{text-align:right}
.paper td.strong{font-size:${print.strong}pt;font-weight:700}
.paper td.blank{border:.3mm solid #000;height:${print.tallRow}mm}
.paper .beside{display:flex;gap:${columnGap}mm}
.paper .beside>.part{min-width:0}
${shares}
.paper .tall td{height:${print.tallRow}mm;vertical-align:middle}
.paper .figures{display:flex;flex-wrap:wrap;justify-content:space-between;gap:2mm}
.paper figure{break-inside:avoid;width:min-content}
.paper figure svg{display:block}
.paper figcaption{font-size:${print.small}pt;text-align:center}
.paper .blanks{display:grid;gap:0 5mm}
.paper .blanks.c1{grid-template-columns:1fr}
.paper .blanks.c2{grid-template-columns:1fr 1fr}
.paper .blanks.c3{grid-template-columns:1fr 1fr 1fr}
.paper .blanks.c4{grid-template-columns:2fr 2fr 2fr 1fr}
.paper .blanks p{height:${print.blank}mm;border-bottom:.25mm solid #000;font-size:${print.small}pt;margin:0}
.paper .boxes{display:grid;border:.3mm solid #000;border-width:.3mm 0 0 .3mm;margin-bottom:${print.gap}mm}
.paper .boxes.c4{grid-template-columns:1fr 1fr 1fr 1fr}
.paper .boxes>div{border:.3mm solid #000;border-width:0 .3mm .3mm 0;padding:0 ${print.cell.across}mm ${print.cell.along}mm;overflow-wrap:anywhere;break-inside:avoid}
.paper .boxes p{margin:0;font-size:${print.small}pt;line-height:1.2}
.paper .boxes p:only-child{padding-bottom:${print.actual}mm}
.paper .boxes p.value{font-size:${print.plain}pt;line-height:${print.leading};min-height:${print.actual}mm}
.paper .code{display:flex;gap:2mm;margin-bottom:${print.gap}mm;break-inside:avoid}
.paper .code b{font-size:${print.small}pt;line-height:${print.tight}}
.paper .code svg{margin:-${print.gap}mm 0}
.paper .feet{display:grid;gap:2mm}
.paper .feet.c1{grid-template-columns:1fr}
.paper .feet.c2{grid-template-columns:1fr 1fr}
.paper .feet.c3{grid-template-columns:1fr 1fr 1fr}
.paper .card{border:.5mm solid #000;padding:1.6mm 2.4mm;min-height:${print.card}mm;break-inside:avoid;display:flex;flex-direction:column}
.paper .card .foot{display:flex;justify-content:space-between;gap:2mm;border-bottom:.25mm solid #000;padding-bottom:.6mm;margin-bottom:1mm;align-items:baseline}
.paper .card .foot b{font-size:${print.foot}pt;line-height:1.1}
.paper .card .foot b{flex:none;max-width:100%}
.paper .card .foot>span{font-size:${print.small}pt;text-align:right}
.paper .card .do{font-size:${print.act}pt;font-weight:700;line-height:1.12}
.paper .c3 .card .do{font-size:${print.actNarrow}pt}
.paper .card .toward{font-size:${print.toward}pt;font-weight:700;line-height:1.12}
.paper .card .recipe{font-weight:700}
.paper .card .room{font-size:${print.small}pt;line-height:1.2}
.paper .card .words{display:flex;justify-content:space-between;gap:2mm}
.paper .card .drawn{flex:none;width:min-content}
.paper .c1 .drawn,.paper .c2 .drawn{width:${print.drawn}mm}
.paper .card .actuals{margin-top:auto;display:grid;grid-template-columns:1fr 1fr 1fr 1fr;gap:0 1mm}
.paper .c3 .card .actuals{grid-template-columns:1fr 1fr}
.paper .card .actuals p{border:.3mm solid #000;height:${print.actual}mm;padding:.4mm .8mm;font-size:${print.small}pt;line-height:1.1;margin-top:1mm}
.paper .card .bound{font-weight:700}
.paper .notice{border:.5mm solid #000;padding:.3mm 1.4mm;display:inline-block}
.paper .step{border:.35mm solid #000;margin-bottom:${print.gap}mm;break-inside:avoid;display:grid;grid-template-columns:${print.signWidth}mm 1fr}
.paper .step>div{padding:1.2mm 1.6mm}
.paper .step p{margin-bottom:.6mm}
.paper .step ul{margin-bottom:.6mm;font-size:${print.small}pt}
.paper .step li{max-width:${proseWidth(print.small)}mm;padding-left:${dashWidth}mm;margin-bottom:.2mm}
.paper .step .dash li::before{left:.4mm}
.paper .step .run{font-size:${print.small}pt;max-width:${proseWidth(print.small)}mm}
.paper .step .number{display:block;height:${print.actual}mm;font-size:20pt;font-weight:700;line-height:${print.actual}mm;text-align:center}
.paper .step .stop{border:.7mm solid #000;padding:.8mm 1.6mm;max-width:${proseWidth(print.plain) + 4.6}mm}
.paper .step .sign{border-right:.25mm solid #000;padding:0}
.paper .step .sign p{height:${print.actual}mm;border-top:.25mm solid #000;font-size:${print.small}pt;padding:.4mm 1mm;margin:0}
.paper .patterns{position:absolute}
.paper svg{overflow:visible}
:where(.paper svg path:not([fill]),.paper svg circle:not([fill])){fill:none;stroke:none}
.paper svg text.halo{paint-order:stroke;stroke:#fff;stroke-width:4px}
.paper svg text{fill:#000;font-family:inherit}
.paper svg .hatching{stroke:#000;stroke-width:1}
.paper svg .ground-hatching{stroke:#777;stroke-width:1}
.paper svg .body{fill:#fff;stroke:#000;stroke-width:1.2;stroke-linejoin:round}
.paper svg .shade{fill:#e4e4e4;stroke:#000;stroke-width:1;stroke-linejoin:round}
.paper svg .edge{stroke:#000;stroke-width:1.6}
.paper svg .fine{stroke:#666;stroke-width:1}
.paper svg .outline{stroke:#000;stroke-width:1}
.paper svg .centre{stroke:#000;stroke-width:1;stroke-dasharray:14 3 2 3}
.paper svg .solid{fill:#000}
.paper svg .grid{stroke:#bbb;stroke-width:.5}
.paper svg .zero{stroke:#000;stroke-width:1}
.paper svg .found{stroke:#000;stroke-width:1.6;stroke-dasharray:6 5}
.paper svg .planned{stroke:#000;stroke-width:3}
.paper svg .state{stroke:#000;stroke-width:1}
.paper svg .gate{stroke:#000;stroke-width:2}
.paper svg .hatch{stroke:#000;stroke-width:1}
.paper svg .bound{stroke:#000;stroke-width:3}
.paper svg .before{stroke:#000;stroke-width:1;stroke-dasharray:3 2.5}
.paper svg .after{stroke:#000;stroke-width:1.6}
.paper svg .reserve{stroke:#000;stroke-width:1;stroke-dasharray:1.5 2}
.paper svg .leader{stroke:#000;stroke-width:.8}
.paper svg .gap{fill:#fff}
`
