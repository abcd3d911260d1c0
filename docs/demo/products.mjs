// Line drawings of the products, and of the cells in the Tor 600. Places of ports and cells are given beside the strokes, for the callouts.

const ink = "#16202a", thin = "#55616c", paper = "#fcfdfb", shade = "#e9edea", copper = "#b4622e";

const svg = (width, height, label, body) => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" role="img" aria-label="${label}" font-family="DejaVu Sans, sans-serif" fill="none" stroke="${ink}" stroke-width="3" stroke-linejoin="round" stroke-linecap="round">
<rect width="${width}" height="${height}" fill="${paper}" stroke="none"/>
${body.join("\n")}
</svg>
`;

const text = (x, y, words, { size = 18, weight = 400, fill = ink, anchor = "middle", spacing = 0 } = {}) =>
  `<text x="${x}" y="${y}" font-size="${size}" font-weight="${weight}" fill="${fill}" stroke="none" text-anchor="${anchor}"${spacing ? ` letter-spacing="${spacing}"` : ""}>${words}</text>`;
const box = (x, y, w, h, r, { fill = "none", stroke = ink, width = 3 } = {}) => `<rect x="${x}" y="${y}" width="${w}" height="${h}" rx="${r}" fill="${fill}" stroke="${stroke}" stroke-width="${width}"/>`;
const path = (d, { fill = "none", stroke = ink, width = 3 } = {}) => `<path d="${d}" fill="${fill}" stroke="${stroke}" stroke-width="${width}"/>`;
const circle = (x, y, r, { fill = "none", stroke = ink, width = 3 } = {}) => `<circle cx="${x}" cy="${y}" r="${r}" fill="${fill}" stroke="${stroke}" stroke-width="${width}"/>`;

const outlet = (x, y, r) => [
  circle(x, y, r, { fill: shade }), circle(x, y, r * 0.78, { fill: paper }), circle(x - r * 0.3, y, r * 0.1, { fill: ink }), circle(x + r * 0.3, y, r * 0.1, { fill: ink }),
  path(`M${x - 8} ${y - r * 0.78}v10h16v-10M${x - 8} ${y + r * 0.78}v-10h16v10`, { width: 2.5, fill: shade }),
].join("");
const usbC = (x, y) => box(x - 26, y - 11, 52, 22, 11, { fill: paper }) + box(x - 15, y - 3, 30, 6, 3, { width: 1.6 });
const usbA = (x, y) => box(x - 30, y - 15, 60, 30, 2, { fill: paper }) + box(x - 23, y - 9, 46, 11, 1, { fill: ink, width: 1 });
const screw = (x, y) => circle(x, y, 8, { width: 2, fill: paper }) + path(`M${x - 4} ${y - 4}l8 8`, { width: 2 });
const vents = (x, y, w, count, pitch = 15) => path(Array.from({ length: count }, (_, i) => `M${x} ${y + i * pitch}h${w}`).join(""), { width: 4, stroke: thin });

const place = (width, height, x, y, w, h, marking = "") => ({
  x: +(((x - w / 2) / width).toFixed(4)), y: +(((y - h / 2) / height).toFixed(4)), width: +((w / width).toFixed(4)), height: +((h / height).toFixed(4)),
  pin_x: +((x / width).toFixed(4)), pin_y: +((y / height).toFixed(4)), is_group: false, marking,
});

function tor600() {
  const W = 1040, H = 780, b = [];
  b.push(path("M250 150V96q0-34 34-34h472q34 0 34 34v54", { width: 3 }), path("M282 150v-40q0-16 16-16h444q16 0 16 16v40"));
  b.push(box(120, 150, 800, 520, 34, { fill: paper, width: 4 }), box(146, 176, 748, 468, 20, { fill: shade, stroke: thin, width: 2 }));
  b.push(box(190, 670, 90, 22, 5, { fill: ink }), box(760, 670, 90, 22, 5, { fill: ink }));
  for (const [x, y] of [[168, 198], [872, 198], [168, 622], [872, 622]]) b.push(screw(x, y));
  b.push(box(380, 204, 280, 120, 10, { fill: ink }), text(452, 284, "78", { size: 66, weight: 700, fill: paper }), text(512, 284, "%", { size: 30, fill: paper, anchor: "start" }));
  b.push(box(572, 236, 62, 30, 4, { stroke: paper, width: 2.5 }), box(634, 244, 6, 14, 1, { fill: paper, stroke: paper, width: 1 }));
  for (let i = 0; i < 3; i++) b.push(box(577 + i * 18, 241, 13, 20, 1, { fill: paper, stroke: paper, width: 1 }));
  b.push(text(604, 302, "0 W", { size: 20, fill: paper }), text(520, 366, "FERROWICK", { size: 30, weight: 700, spacing: 6 }), text(520, 394, "TOR 600", { size: 18, fill: thin, spacing: 3 }));
  b.push(vents(200, 236, 130, 6), vents(710, 236, 130, 6));
  b.push(box(190, 424, 330, 196, 14, { fill: paper }), outlet(275, 510, 66), outlet(435, 510, 66), text(355, 606, "AC 230V~ 50Hz 600W", { size: 17 }));
  b.push(box(548, 424, 302, 196, 14, { fill: paper }));
  b.push(usbC(600, 462), usbC(600, 508), text(640, 491, "USB-C 100W", { size: 14, anchor: "start" }), usbA(602, 556), usbA(680, 556), text(641, 600, "USB-A 5V 3A", { size: 14 }));
  b.push(circle(790, 470, 34, { fill: shade }), circle(790, 470, 22, { fill: paper }), circle(790, 470, 5, { fill: ink }), text(790, 526, "12V 10A", { size: 14 }));
  b.push(circle(790, 566, 18, { fill: shade }), circle(790, 566, 6, { fill: copper, stroke: copper }), text(790, 606, "DC IN 12-30V", { size: 13 }));
  const p = (x, y, w, h) => place(W, H, x, y, w, h);
  return { name: "tor600-front", width: W, height: H, svg: svg(W, H, "Line drawing of the front of the Ferrowick Tor 600", b), anchors: { "AC outlets": p(275, 510, 132, 132), "USB-C": p(600, 462, 52, 22), "USB-A": p(602, 556, 60, 30), "12 V socket": p(790, 470, 68, 68), "DC input": p(790, 566, 36, 36) } };
}

function drover1000() {
  const W = 1040, H = 780, b = [];
  // Both ends, one above the other.
  b.push(path("M150 120h740l36 30v170H114V150z", { fill: paper, width: 4 }));
  for (let i = 0; i < 19; i++) b.push(path(`M${172 + i * 38.5} 120v-26h18v26`, { width: 2.4, fill: shade }));
  b.push(box(140, 160, 760, 140, 8, { fill: shade, stroke: thin, width: 2 }));
  for (const [x, y] of [[158, 178], [882, 178], [158, 282], [882, 282]]) b.push(screw(x, y));
  b.push(outlet(270, 230, 58), outlet(420, 230, 58), text(345, 296, "230V~ 50Hz", { size: 13 }));
  b.push(usbC(560, 216), text(560, 254, "USB-C 30W", { size: 14 }), box(636, 196, 74, 44, 6, { fill: paper }), path("M658 208v20M690 218a8 8 0 1 1-.1-.1"), circle(742, 218, 8, { fill: copper, stroke: copper }), text(742, 254, "ON", { size: 13 }));
  b.push(text(818, 214, "SORVANE", { size: 22, weight: 700, spacing: 1 }), text(818, 240, "Drover 1000", { size: 15, fill: thin }));
  b.push(text(520, 360, "output end", { size: 16, fill: thin }));
  b.push(path("M150 440h740l36 30v190H114V470z", { fill: paper, width: 4 }));
  for (let i = 0; i < 19; i++) b.push(path(`M${172 + i * 38.5} 440v-26h18v26`, { width: 2.4, fill: shade }));
  b.push(box(140, 480, 760, 160, 8, { fill: shade, stroke: thin, width: 2 }));
  for (const [x, y] of [[158, 498], [882, 498], [158, 622], [882, 622]]) b.push(screw(x, y));
  b.push(circle(520, 560, 66, { fill: paper }), circle(520, 560, 54, { width: 2 }), circle(520, 560, 16, { fill: shade }));
  for (let i = 0; i < 7; i++) { const a = (i / 7) * Math.PI * 2; b.push(path(`M${(520 + Math.cos(a) * 16).toFixed(1)} ${(560 + Math.sin(a) * 16).toFixed(1)}q${(Math.cos(a + 0.7) * 24).toFixed(1)} ${(Math.sin(a + 0.7) * 24).toFixed(1)} ${(Math.cos(a + 0.5) * 36).toFixed(1)} ${(Math.sin(a + 0.5) * 36).toFixed(1)}`, { width: 2 })); }
  for (const [x, sign, fill] of [[270, "+", copper], [770, "−", ink]]) b.push(circle(x, 560, 44, { fill: paper }), path(`M${x - 24} 546l24-14 24 14v28l-24 14-24-14z`, { fill: shade, width: 2.4 }), circle(x, 560, 12, { fill: paper }), text(x + 76, 574, sign, { size: 46, weight: 700, fill }));
  b.push(text(270, 630, "12V", { size: 15 }), text(520, 700, "battery end", { size: 16, fill: thin }));
  const p = (x, y, w, h) => place(W, H, x, y, w, h);
  return { name: "drover1000-ends", width: W, height: H, svg: svg(W, H, "Line drawing of both ends of the Sorvane Drover 1000", b), anchors: { "AC outlets": p(270, 230, 116, 116), "USB-C": p(560, 216, 52, 22), "Battery terminals": p(270, 560, 88, 88) } };
}

function lath65() {
  const W = 1040, H = 780, b = [];
  b.push(path("M150 250l150-90h300l-150 90z", { fill: shade, width: 3 }), path("M450 250l150-90v330l-150 100z", { fill: shade, width: 3 }), box(150, 250, 300, 340, 18, { fill: paper, width: 4 }));
  b.push(box(262, 470, 76, 34, 17, { fill: paper }), box(278, 482, 44, 10, 5, { fill: ink, width: 1 }), text(300, 540, "65 W", { size: 24, weight: 700 }), text(300, 330, "QUELVANE", { size: 26, weight: 700, spacing: 3 }), text(300, 358, "Lath 65", { size: 18, fill: thin }), circle(300, 424, 6, { fill: copper, stroke: copper }));
  b.push(box(690, 210, 230, 340, 18, { fill: paper, width: 4 }), path("M920 320h64a10 10 0 0 1 0 22h-64M920 418h64a10 10 0 0 1 0 22h-64", { fill: shade }), path("M690 470h-14v-40h14", { width: 2.4 }));
  b.push(box(714, 236, 182, 288, 6, { stroke: thin, width: 1.6 }));
  for (const [i, line] of ["MODEL QL-65C1", "IN 100-240V~", "50/60Hz 1.6A", "OUT 5V 3A / 9V 3A", "15V 3A / 20V 3.25A", "PPS 3.3-21V 3A"].entries()) b.push(text(805, 274 + i * 28, line, { size: 15 }));
  b.push(path("M736 470h26v26h-26z", { width: 2.4 }), path("M742 476h14v14h-14z", { width: 2.4 }), path("M800 496a14 14 0 1 1 28 0", { width: 2.4 }), text(860, 492, "indoor", { size: 12, fill: thin }));
  b.push(text(300, 640, "port side", { size: 16, fill: thin }), text(805, 606, "label side, pins", { size: 16, fill: thin }));
  const p = (x, y, w, h) => place(W, H, x, y, w, h);
  return { name: "lath65-sides", width: W, height: H, svg: svg(W, H, "Line drawing of the Quelvane Lath 65 from its port side and its label side", b), anchors: { "USB-C": p(300, 487, 76, 34), "Mains pins": p(960, 331, 64, 22) } };
}

function tor600Cells() {
  const W = 1040, H = 700, b = [];
  b.push(box(70, 70, 620, 560, 20, { fill: shade, width: 4 }));
  for (let row = 0; row < 8; row++) for (let column = 0; column < 4; column++) {
    const x = 150 + column * 152, y = 116 + row * 67;
    b.push(circle(x, y, 31, { fill: paper, width: 2.6 }), circle(x, y, 11, { width: 2, fill: row % 2 ? shade : paper }), row % 2 ? path(`M${x - 5} ${y}h10`, { width: 2 }) : path(`M${x - 5} ${y}h10M${x} ${y - 5}v10`, { width: 2 }));
  }
  for (let row = 0; row < 8; row++) b.push(path(`M150 ${116 + row * 67}h456`, { stroke: copper, width: 8 }).replace("<path", '<path opacity=".35"'));
  b.push(text(380, 668, "8 groups of 4 cells, seen from the positive end of group 1", { size: 17, fill: thin }));
  b.push(box(770, 110, 190, 470, 26, { fill: paper, width: 4 }), path("M770 152h190M770 546h190", { width: 2 }), box(830, 92, 70, 20, 5, { fill: shade }));
  for (const [i, line] of ["PLK-32L45", "3.2V 4.5Ah"].entries()) b.push(`<g transform="rotate(-90 ${848 + i * 44} 348)">${text(848 + i * 44, 356, line, { size: i ? 30 : 36, weight: 700 })}</g>`);
  b.push(text(865, 620, "one cell, its sleeve", { size: 16, fill: thin }));
  return { name: "tor600-cells", width: W, height: H, svg: svg(W, H, "Line drawing of the 32 cells of the Ferrowick Tor 600 and of the print on one sleeve", b), anchors: { BT1: { ...place(W, H, 865, 345, 190, 470, "PLK-32L45\n3.2V 4.5Ah"), pin_x: +(940 / W).toFixed(4), pin_y: +(172 / H).toFixed(4) } } };
}

export const products = [tor600(), tor600Cells(), drover1000(), lath65()];
