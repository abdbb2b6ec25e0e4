//! The looks of the page: colours and rules.

/// Ink, quiet ink, accent, ground of bands, rule, bars behind numbers: as `#rrggbb`.
pub(in crate::report) const COLOURS: [(&str, &str); 6] = [
    ("--ink", "#1c2629"),
    ("--quiet", "#4a5659"),
    ("--accent", "#0b5f59"),
    ("--band", "#eef3f2"),
    ("--rule", "#9fb0ae"),
    ("--bar", "#cfe3e0"),
];

pub(super) const STYLE: &str = "
*{box-sizing:border-box}
body{margin:0 auto;max-width:190mm;padding:8mm 4mm;background:#fff;color:var(--ink);
 font:10.5pt/1.4 Georgia,'Times New Roman',serif}
h1{font-size:17pt;line-height:1.15;margin:0 0 1mm;font-weight:600}
h2{font-size:11.5pt;margin:5mm 0 1.5mm;padding-bottom:.6mm;border-bottom:1.5pt solid var(--accent);
 color:var(--accent);font-weight:600;break-after:avoid}
p{margin:0 0 1.5mm}
.quiet{color:var(--quiet)}
.head{display:flex;gap:6mm;align-items:flex-start;justify-content:space-between}
.result{border:2pt solid var(--accent);padding:2mm 4mm;text-align:center;min-width:46mm}
.result b{display:block;font-size:20pt;line-height:1.1;font-variant-numeric:tabular-nums}
table{border-collapse:collapse;width:100%;font-size:9.2pt}
th,td{text-align:left;vertical-align:top;padding:.9mm 1.6mm;border-bottom:.5pt solid var(--rule)}
th{font-weight:600;color:var(--quiet)}
td.n,th.n{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}
.letter{font-size:13pt;font-weight:600;color:var(--accent)}
.two{columns:2;column-gap:7mm;font-size:9.2pt}
.two p{break-inside:avoid}
ul{margin:0;padding-left:4.5mm}
li{margin:0 0 .7mm}
.chart td,.chart th{padding:.5mm .9mm;text-align:right;font-size:7.8pt;line-height:1.2;
 font-variant-numeric:tabular-nums;border-right:.5pt solid var(--band)}
.chart{table-layout:fixed}
.chart thead th{vertical-align:bottom;overflow-wrap:anywhere}
.chart thead th:not(:first-child){writing-mode:vertical-rl;transform:rotate(180deg);text-align:left;height:36mm}
.chart td{white-space:nowrap;background:linear-gradient(var(--bar),var(--bar)) no-repeat 0 0;background-size:0 100%}
.chart th:first-child{text-align:left;width:44mm;font-weight:400;color:var(--ink)}
.whole{white-space:nowrap}
.chart .truth{font-weight:700;color:var(--ink)}
.chart .settled th:first-child{font-weight:700}
.chart .after th,.chart .after td{border-top:1.2pt dashed var(--ink)}
.chart .open{color:var(--quiet);border-left:1.2pt solid var(--rule);background:none}
.chart thead .open{border-left:0;border-right:1.2pt solid var(--rule)}
svg{display:block;width:100%;height:auto}
figure{margin:0;break-inside:avoid}
figcaption{font-size:8.6pt;color:var(--quiet);margin-bottom:1mm}
.notice{border-left:3pt solid var(--accent);background:var(--band);padding:1.5mm 3mm;font-size:9.2pt}
.break{break-before:page}
.small{font-size:8.6pt;line-height:1.3}
.small p{margin-bottom:.8mm}
@page{size:A4;margin:10mm 11mm}
@media print{
 body{padding:0;max-width:none;font-size:9.2pt;line-height:1.3}
 h1{font-size:15pt} h2{font-size:10.5pt;margin:3mm 0 1mm}
 p{margin-bottom:.9mm} table{font-size:8.2pt} td,th{padding:.5mm 1.3mm}
 .two{font-size:8.2pt} .notice{font-size:8.4pt;padding:1mm 3mm} .small{font-size:7.9pt}
 .chart td,.chart th{font-size:7pt;padding:.25mm .5mm}
 svg{max-height:44mm}
}
";
