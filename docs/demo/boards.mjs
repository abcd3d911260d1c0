// The boards of the demo. All makers, part numbers and layouts are invented.
import { Board } from "./parts.mjs";

function tor600A() {
  const b = new Board({ width: 1000, height: 690, mask: "green" });
  b.pcb(20, 18, 952, 646);
  b.pour("M690 60h250v330l-30 40v190H600l-30-30V400l60-60h60z");
  b.pour("M210 210h220v240l-40 40H230z");
  b.pour("M50 60h120v420H60z");
  b.bus(600, 470, 760, 505, 5); b.bus(470, 90, 600, 130, 6); b.bus(250, 470, 330, 520, 4); b.bus(180, 250, 260, 210, 4, 7);
  b.vias(600, 440, 90, 110, 26); b.vias(720, 180, 210, 40, 18); b.vias(380, 440, 40, 40, 8);
  b.slot(448, 416, 12, 34); b.slot(448, 540, 12, 84); b.slot(448, 60, 12, 90);
  b.silkLine("M454 40v20M454 150v60M454 446v14M454 510v24M454 626v24", 2, "8 6");
  // Pack side, right.
  b.lug("B+", 918, 92); b.lug("B-", 918, 404); delete b.parts["B+"]; delete b.parts["B-"];
  b.bladeFuse("F1", 812, 96, { lines: ["35"] });
  b.strip("R1", 812, 404, 116, 34, { lines: ["R0005"] });
  for (const [i, x, y] of [[21, 752, 208], [22, 838, 208], [23, 752, 296], [24, 838, 296]]) b.can(`C${i}`, x, y, 38, { lines: ["OND", "2200uF", "50V"], size: 10.5 });
  b.silk(752, 162, "C21"); b.silk(838, 162, "C22"); b.silk(752, 346, "C23"); b.silk(838, 346, "C24");
  b.heatsink(500, 604, 440, 40);
  for (let i = 1; i <= 4; i++) { b.tab(`Q${i}`, 545 + (i - 1) * 116, 562, { lines: ["MWK", "10N32"] }); b.silk(545 + (i - 1) * 116 + 40, 530, `Q${i}`); }
  b.transformer("T1", 556, 274, 206, 196, { lines: ["HW-EE55-071", "3T+3T : 42T", "HI-POT OK", "2325"], size: 13.5 });
  b.chip("U1", 664, 444, { w: 92, h: 36, pins: 16, lines: ["MWK-721", "2321 K7"], size: 11 });
  b.passives(596, 484, 6, 2); b.passives(730, 446, 1, 3);
  b.module(622, 98, 216, 112, "TOR-CTL V2");
  b.chip("U2", 610, 94, { w: 52, h: 52, pins: 32, quad: true, lines: [], leads: 6 }); b.scour(610, 94, 44, 34);
  b.parts.U2.marking = "??????";
  b.passives(532, 66, 1, 4); b.passives(664, 70, 3, 4, 24, 16);
  // Isolation, middle.
  b.disc("CY1", 446, 400, 18, { lines: ["Y1"], size: 11 });
  b.optocoupler("U3", 454, 474, { lines: ["HCO-17"] }); b.optocoupler("U4", 454, 516, { lines: ["HCO-17"] });
  // High-voltage side, left.
  b.heatsink(196, 36, 236, 38);
  for (let i = 1; i <= 4; i++) { b.tab(`D${i}`, 226 + (i - 1) * 59, 122, { lines: ["YD12", "A65"], up: false }); }
  b.silk(226, 186, "D1"); b.silk(285, 186, "D2"); b.silk(344, 186, "D3"); b.silk(403, 186, "D4");
  b.lyingCan("C1", 322, 250, 178, 84, { lines: ["220uF 450V", "105C"], size: 15 });
  b.lyingCan("C2", 322, 350, 178, 84, { lines: ["220uF 450V", "105C"], size: 15 });
  b.chipResistor("R44", 322, 420, { w: 56, h: 26, lines: ["474"], size: 14 });
  b.heatsink(62, 606, 372, 38);
  for (let i = 5; i <= 8; i++) { b.tab(`Q${i}`, 110 + (i - 5) * 92, 566, { lines: ["YTQ65", "-080", "Y2318"], wide: true, size: 9 }); b.silk(110 + (i - 5) * 92, 500, `Q${i}`); }
  b.passives(196, 462, 8, 1, 25); b.passives(236, 438, 2, 1); b.passives(372, 438, 2, 1);
  b.toroid("L1", 122, 402, 66);
  b.block("C3", 122, 282, 118, 66, { lines: ["X2 MKP 2u2", "310V~", "40/110/56"], size: 12 });
  b.block("K1", 122, 188, 108, 84, { lines: ["ZR-112D", "12VDC", "?0A 250V~"], size: 12, fill: "#1d2a35", edge: "#0e151b", light: "#34485a", ink: "#d3dde4" }); b.scour(93, 205, 13, 13);
  b.terminal("J1", 92, 92, 92, 52, 3);
  b.silk(878, 48, "B+ 29V2"); b.silk(878, 460, "B-"); b.silk(812, 50, "F1"); b.silk(812, 436, "R1"); b.silk(556, 390, "T1"); b.silk(664, 418, "U1");
  b.silk(610, 50, "U2", { size: 9 }); b.silk(484, 404, "CY1", { size: 10 }); b.silk(506, 479, "U3", { size: 10 }); b.silk(506, 521, "U4", { size: 10 }); b.silk(214, 222, "C1"); b.silk(214, 322, "C2"); b.silk(276, 425, "R44");
  b.silk(58, 346, "L1"); b.silk(122, 240, "C3"); b.silk(122, 141, "K1"); b.silk(140, 58, "AC OUT"); b.silk(720, 658, "TOR-PWR V1.3  2325", { size: 10, weight: 400 }); b.silk(200, 300, "HIGH VOLTAGE", { size: 10, rotate: -90 });
  b.group("C21-C24", ["C21", "C22", "C23", "C24"]); b.group("Q1-Q4", ["Q1", "Q2", "Q3", "Q4"]); b.group("D1-D4", ["D1", "D2", "D3", "D4"]);
  b.group("C1, C2", ["C1", "C2"]); b.group("Q5-Q8", ["Q5", "Q6", "Q7", "Q8"]); b.group("U3, U4", ["U3", "U4"]);
  return { name: "tor600-a", label: "Drawing of the main power board of the Ferrowick Tor 600, top side", board: b };
}

function tor600B() {
  const b = new Board({ width: 1000, height: 440, mask: "green" });
  b.pcb(24, 26, 944, 372);
  b.pour("M60 60h350v150H60zM590 250h340v120H590z"); b.pour("M440 70h160v90H440z");
  b.bus(300, 280, 420, 240, 8, 6); b.bus(600, 190, 700, 230, 6, 6); b.vias(80, 170, 300, 40, 26); b.vias(620, 260, 280, 20, 16);
  for (let i = 0; i < 9; i++) { b.ground(`<rect x="${78 + i * 70}" y="344" width="38" height="34" rx="3" fill="#d9c58a" stroke="#a67f3f"/>`); b.silk(97 + i * 70, 338, i === 0 ? "B-" : `B${i}`, { size: 10 }); }
  b.lug("P+", 908, 102); b.lug("P-", 108, 102); delete b.parts["P+"]; delete b.parts["P-"];
  for (let i = 0; i < 8; i++) { const x = 196 + (i % 4) * 66, y = 92 + Math.floor(i / 4) * 78; b.chip(`Q${i + 9}`, x, y, { w: 50, h: 44, pins: 8, lines: ["YN40", "1R9"], size: 10.5, leads: 6 }); b.silk(x, y - 33, `Q${i + 9}`, { size: 9 }); }
  b.chip("U101", 520, 262, { w: 128, h: 52, pins: 24, lines: ["HCB-814", "8S 2319"], size: 13 });
  b.chipFuse("F101", 740, 84, { w: 62, h: 34, lines: ["30"], size: 17 }); b.chipFuse("F102", 740, 134, { w: 62, h: 34, lines: ["30"], size: 17 });
  b.strip("R101", 540, 110, 96, 30, { lines: ["R001"] });
  for (let i = 0; i < 8; i++) b.chipResistor(`R${110 + i}`, 180 + (i % 4) * 56, 250 + Math.floor(i / 4) * 42, { w: 40, h: 24, lines: ["330"], size: 11 });
  b.header("J101", 846, 330, 6); b.passives(640, 236, 7, 3, 28, 18); b.passives(444, 312, 6, 1, 30);
  b.disc("RT1", 734, 348, 17, { lines: ["103"], fill: "#2a3a34", size: 9 });
  b.silk(520, 222, "U101"); b.silk(740, 58, "F101"); b.silk(740, 164, "F102"); b.silk(540, 86, "R101"); b.silk(846, 304, "J101"); b.silk(734, 328, "RT1", { size: 9 }); b.silk(908, 152, "P+"); b.silk(108, 152, "P-"); b.silk(262, 226, "R110-R117", { size: 10 }); b.silk(866, 216, "TOR-BMS 8S V2.0", { size: 10, weight: 400 });
  b.group("Q9-Q16", ["Q9", "Q10", "Q11", "Q12", "Q13", "Q14", "Q15", "Q16"]); b.group("F101, F102", ["F101", "F102"]);
  b.group("R110-R117", [110, 111, 112, 113, 114, 115, 116, 117].map((n) => `R${n}`));
  return { name: "tor600-b", label: "Drawing of the battery board of the Ferrowick Tor 600, top side", board: b };
}

function tor600C() {
  const b = new Board({ width: 1000, height: 560, mask: "green" });
  b.pcb(22, 24, 948, 494);
  b.pour("M60 330h420v150H60zM520 60h400v150H520z"); b.pour("M540 300h380v180H540z");
  b.bus(280, 150, 400, 210, 6); b.bus(560, 230, 700, 280, 5); b.vias(80, 300, 360, 40, 30); b.vias(560, 210, 320, 30, 20);
  b.usbC("J2", 96, 84); b.usbC("J3", 216, 84); b.usbA("J4", 380, 98); b.usbA("J5", 500, 98);
  b.qfn("U6", 156, 192, { w: 58, h: 58, lines: ["KPD-318", "2322"], size: 10.5 });
  b.chip("U5", 330, 268, { w: 64, h: 64, pins: 32, quad: true, lines: ["BBX-4027", "Y2320"], size: 10.5, leads: 6 });
  b.inductor("L2", 186, 384, 112, { lines: ["4R7"], size: 22 });
  for (let i = 17; i <= 20; i++) { const k = i - 17, x = 300 + (k % 2) * 74, y = 372 + Math.floor(k / 2) * 74; b.chip(`Q${i}`, x, y, { w: 48, h: 42, pins: 8, lines: ["YN40", "3R2"], size: 10.5, leads: 6 }); b.silk(x + 38, y - 24, `Q${i}`, { size: 8 }); }
  b.chipFuse("F3", 92, 474, { w: 52, h: 28, lines: ["10"], size: 15 });
  b.bladeFuse("F2", 872, 118, { lines: ["15"], body: "#3a74b8", light: "#79a8dd", dark: "#28568d", scale: 0.95 });
  b.terminal("J6", 720, 92, 110, 56, 2, { fill: "#3b4146", edge: "#1d2124" });
  b.chip("U7", 650, 268, { w: 62, h: 44, pins: 8, lines: ["HRB-1240", "2314"], size: 10.5 });
  b.inductor("L3", 764, 268, 84, { lines: ["150"], size: 18 });
  b.chip("U8", 650, 404, { w: 62, h: 44, pins: 8, lines: ["HRB-1240", "2314"], size: 10.5 });
  b.inductor("L4", 764, 404, 72, { lines: ["6R8"], size: 16 });
  b.can("C61", 862, 258, 34, { lines: ["OND", "470uF", "25V"], size: 10 }); b.can("C62", 862, 392, 34, { lines: ["OND", "470uF", "25V"], size: 10 });
  b.chip("U9", 508, 404, { w: 52, h: 52, pins: 24, quad: true, lines: ["CHQ-62"], size: 10.5, leads: 6 });
  b.passives(232, 168, 4, 3, 26, 19); b.passives(420, 214, 5, 4, 28, 20); b.passives(560, 470, 6, 2, 28, 18); b.passives(416, 474, 4, 2); b.passives(560, 330, 1, 4);
  b.silk(96, 56, "USB-C 1", { size: 9 }); b.silk(216, 56, "USB-C 2", { size: 9 }); b.silk(440, 54, "USB-A", { size: 9 }); b.silk(156, 148, "U6"); b.silk(330, 222, "U5"); b.silk(186, 318, "L2"); b.silk(142, 479, "F3"); b.silk(872, 70, "F2"); b.silk(650, 232, "U7"); b.silk(764, 218, "L3"); b.silk(650, 368, "U8"); b.silk(764, 360, "L4"); b.silk(508, 360, "U9"); b.silk(720, 56, "12V OUT", { size: 9 }); b.silk(862, 302, "C61", { size: 9 }); b.silk(862, 436, "C62", { size: 9 }); b.silk(830, 494, "TOR-OUT V1.1  2324", { size: 10, weight: 400 });
  b.group("Q17-Q20", ["Q17", "Q18", "Q19", "Q20"]); b.group("C61, C62", ["C61", "C62"]); b.group("J2, J3", ["J2", "J3"]); b.group("J4, J5", ["J4", "J5"]);
  return { name: "tor600-c", label: "Drawing of the output board of the Ferrowick Tor 600, top side", board: b };
}

function drover1000A() {
  const b = new Board({ width: 1000, height: 660, mask: "blue" });
  b.pcb(22, 18, 948, 612);
  b.pour("M50 50h230v540H50z"); b.pour("M300 50h210v220H300zM300 360h210v220H300z"); b.pour("M560 150h170v330H560z");
  b.bus(430, 300, 560, 330, 6); b.bus(740, 330, 860, 360, 5); b.vias(70, 190, 40, 300, 28); b.vias(560, 470, 160, 40, 18);
  b.slot(548, 40, 12, 60); b.slot(548, 540, 12, 70); b.silkLine("M554 100v60M554 296v70M554 490v50", 2, "8 6");
  b.lug("B+", 84, 120); b.lug("B-", 84, 520); delete b.parts["B+"]; delete b.parts["B-"];
  for (let i = 1; i <= 3; i++) { b.bladeFuse(`F${i}`, 182, 92 + (i - 1) * 92, { lines: ["35"] }); b.silk(236, 97 + (i - 1) * 92, `F${i}`); }
  for (let i = 1; i <= 4; i++) { const x = 156 + ((i - 1) % 2) * 84, y = 392 + Math.floor((i - 1) / 2) * 86; b.can(`C${i}`, x, y, 37, { lines: ["OND", "3300uF", "25V"], size: 10.5 }); b.silk(x + 40, y - 34, `C${i}`, { size: 9 }); }
  b.heatsink(276, 36, 256, 38); b.heatsink(276, 572, 256, 38);
  for (let i = 1; i <= 4; i++) { b.tab(`Q${i}`, 310 + (i - 1) * 62, 116, { lines: ["MWK", "06N75"], up: false }); b.tab(`Q${i + 4}`, 310 + (i - 1) * 62, 532, { lines: ["MWK", "06N75"] }); }
  b.silk(402, 196, "Q1 Q2 Q3 Q4", { size: 10 }); b.silk(402, 470, "Q5 Q6 Q7 Q8", { size: 10 });
  b.transformer("T1", 640, 232, 168, 124, { lines: ["HW-EE42-120", "2T+2T : 62T", "2247"], size: 12, tape: "tapeBlue" });
  b.transformer("T2", 640, 414, 168, 124, { lines: ["HW-EE42-120", "2T+2T : 62T", "2247"], size: 12, tape: "tapeBlue" });
  b.chip("U1", 400, 288, { w: 96, h: 38, pins: 16, lines: ["MWK-721", "2244 K7"], size: 11.5 });
  b.chip("U2", 400, 388, { w: 66, h: 66, pins: 32, quad: true, lines: ["NTC8-064", "SD10 V17"], size: 11, leads: 6 });
  b.cartridge("F5", 290, 316, 76, 24, { lines: ["2A"], size: 11 });
  b.header("J2", 322, 458, 2);
  b.passives(460, 256, 2, 4); b.passives(318, 236, 6, 1, 26); b.passives(462, 372, 2, 4); b.passives(372, 450, 4, 1, 26);
  b.optocoupler("U3", 554, 322, { lines: ["HCO-17"] });
  b.heatsink(600, 36, 230, 36);
  for (let i = 1; i <= 4; i++) b.tab(`D${i}`, 628 + (i - 1) * 58, 110, { lines: ["YD12", "A65"], up: false, size: 9 });
  b.lyingCan("C10", 806, 226, 128, 82, { lines: ["100uF 400V", "105C"], size: 13 }); b.lyingCan("C11", 806, 322, 128, 82, { lines: ["100uF 400V", "105C"], size: 13 });
  b.heatsink(594, 574, 250, 36);
  for (let i = 9; i <= 12; i++) b.tab(`Q${i}`, 626 + (i - 9) * 62, 534, { lines: ["YTN50", "14A"] });
  b.choke("L1", 792, 426, 92, 96, { lines: ["HL-3m3"], size: 11 });
  b.block("C12", 908, 420, 62, 88, { lines: ["X2 MKP", "1u0", "310V~"], size: 10.5 });
  b.terminal("J3", 910, 540, 56, 96, 3); b.header("J4", 916, 120, 4, { down: true });
  b.disc("RV1", 906, 322, 30, { lines: ["RV-471"], fill: "#315f9e", size: 10 });
  b.passives(890, 196, 3, 2, 24); b.passives(890, 252, 3, 1, 24);
  b.silk(84, 170, "B+ 12V"); b.silk(84, 570, "B-"); b.silk(708, 318, "T1"); b.silk(708, 340, "T2"); b.silk(400, 262, "U1"); b.silk(400, 346, "U2"); b.silk(290, 298, "F5", { size: 10 }); b.silk(322, 438, "FAN", { size: 9 }); b.silk(554, 296, "U3", { size: 9 }); b.silk(806, 178, "C10"); b.silk(806, 372, "C11", { size: 9 }); b.silk(852, 476, "L1", { size: 10 }); b.silk(908, 476, "C12"); b.silk(910, 602, "AC OUT", { size: 10 }); b.silk(906, 290, "RV1", { size: 10 }); b.silk(916, 70, "TO USB", { size: 9 }); b.silk(180, 602, "SD-1000 R4  2247", { size: 10, weight: 400 });
  b.group("F1-F3", ["F1", "F2", "F3"]); b.group("C1-C4", ["C1", "C2", "C3", "C4"]); b.group("Q1-Q4", ["Q1", "Q2", "Q3", "Q4"]); b.group("Q5-Q8", ["Q5", "Q6", "Q7", "Q8"]);
  b.group("T1, T2", ["T1", "T2"]); b.group("D1-D4", ["D1", "D2", "D3", "D4"]); b.group("C10, C11", ["C10", "C11"]); b.group("Q9-Q12", ["Q9", "Q10", "Q11", "Q12"]);
  return { name: "drover1000-a", label: "Drawing of the inverter board of the Sorvane Drover 1000, top side", board: b };
}

function drover1000B() {
  const b = new Board({ width: 800, height: 480, mask: "blue" });
  b.pcb(26, 24, 740, 420);
  b.pour("M60 60h240v150H60zM420 230h300v160H420z"); b.bus(330, 180, 450, 230, 5); b.vias(80, 220, 200, 60, 18); b.vias(440, 240, 260, 30, 14);
  b.header("J10", 96, 190, 4, { down: true }); b.usbC("J11", 700, 130, { vertical: true });
  b.chipFuse("F4", 190, 120, { w: 74, h: 40, lines: ["?A"], size: 18 }); b.scour(180, 120, 22, 24);
  b.chip("U11", 290, 300, { w: 82, h: 58, pins: 8, lines: ["HRB-1240", "2240"], size: 13 });
  b.inductor("L11", 442, 314, 104, { lines: ["100"], size: 24 });
  b.can("C21", 582, 314, 44, { lines: ["OND", "470uF", "25V"], size: 13 });
  b.qfn("U10", 560, 140, { w: 78, h: 78, lines: ["KPD-318", "2236"], size: 14 });
  b.chip("Q21", 420, 130, { w: 62, h: 54, pins: 8, lines: ["YN40", "3R2"], size: 13, leads: 7 });
  b.chipResistor("R21", 320, 150, { w: 52, h: 30, lines: ["R005"], size: 14 });
  b.passives(180, 220, 5, 2, 30, 20); b.passives(180, 390, 6, 1, 30); b.passives(480, 226, 5, 1, 30); b.passives(650, 270, 3, 5, 28, 22);
  b.silk(96, 122, "J10"); b.silk(190, 88, "F4"); b.silk(290, 256, "U11"); b.silk(442, 252, "L11"); b.silk(582, 380, "C21"); b.silk(560, 88, "U10"); b.silk(420, 90, "Q21"); b.silk(320, 124, "R21"); b.silk(700, 84, "USB-C"); b.silk(480, 424, "SD-USB R2", { size: 11, weight: 400 });
  return { name: "drover1000-b", label: "Drawing of the USB board of the Sorvane Drover 1000, top side", board: b };
}

function lath65A() {
  const b = new Board({ width: 1000, height: 700, mask: "black" });
  b.pcb(40, 28, 910, 632, { holes: false });
  b.pour("M70 60h330v260H70z"); b.pour("M560 80h330v240l-60 60H560z"); b.pour("M90 400h300v220H90z");
  b.bus(420, 440, 540, 500, 6); b.bus(640, 400, 720, 440, 5); b.vias(430, 400, 120, 60, 22); b.vias(700, 380, 160, 50, 16); b.vias(100, 560, 160, 50, 12);
  b.slot(560, 388, 14, 110); b.slot(560, 552, 14, 34); b.silkLine("M567 60v36M567 350v34M567 500v58", 2, "8 6");
  b.terminal("J1", 84, 190, 44, 112, 2, { fill: "#d9d6cb", edge: "#8c887b" });
  b.stubFuse("F1", 166, 106, 96, 62, { lines: ["T2AL", "250V"], size: 16 });
  b.disc("RV1", 168, 200, 40, { lines: ["RV-471"], fill: "#315f9e", size: 13 });
  b.block("C1", 168, 300, 112, 74, { lines: ["X2 MKP", "u33 310V~"], size: 14 });
  b.choke("L1", 290, 140, 104, 118, { lines: ["HL-18m"], size: 13 });
  b.block("BD1", 292, 296, 104, 58, { lines: ["KBQ-404", "~ + - ~"], size: 14, fill: "#25282b", edge: "#101214", light: "#45494d", ink: "#d3d8d6" });
  b.lyingCan("C2", 226, 440, 216, 92, { lines: ["82uF 400V", "105C"], size: 18, sleeve: "#143a2e", stripe: "#c7d6ce" });
  b.lyingCan("C3", 226, 558, 216, 92, { lines: ["82uF 400V", "105C"], size: 18, sleeve: "#143a2e", stripe: "#c7d6ce" });
  b.qfn("Q1", 404, 382, { w: 78, h: 78, lines: ["GNV-6514", "2329"], size: 13 });
  b.chip("U1", 428, 490, { w: 92, h: 60, pins: 8, lines: ["QRF-226", "A2331"], size: 14 });
  b.transformer("T1", 566, 222, 228, 210, { lines: ["QLA-RM10-65", "26T : 5T", "2330"], size: 15 });
  b.optocoupler("U2", 566, 528, { lines: ["HCO-24"], size: 10 });
  b.disc("CY1", 566, 612, 26, { lines: ["Y1 222"], size: 11 });
  b.chip("Q2", 734, 160, { w: 72, h: 62, pins: 8, lines: ["YN100", "7R5"], size: 14, leads: 8 });
  b.chip("U3", 842, 150, { w: 52, h: 44, pins: 6, lines: ["SRQ-11"], size: 12 });
  b.can("C11", 744, 300, 54, { lines: ["QPC", "560uF", "25V"], size: 15, sleeve: "#7b2d6a" }); b.can("C12", 864, 300, 54, { lines: ["QPC", "560uF", "25V"], size: 15, sleeve: "#7b2d6a" });
  b.ground(`<rect x="650" y="450" width="260" height="170" rx="4" fill="none" stroke="#e6ece4" stroke-width="1.600" stroke-dasharray="8 6" opacity=".6"/>`);
  b.header("J2", 780, 590, 8); b.passives(676, 474, 9, 4, 26, 22);  b.passives(350, 552, 7, 3, 26, 24); b.passives(660, 92, 3, 1); b.passives(800, 214, 5, 1);
  b.silk(84, 122, "L N"); b.silk(166, 66, "F1"); b.silk(118, 168, "RV1", { size: 10 }); b.silk(168, 352, "C1"); b.silk(290, 70, "L1"); b.silk(292, 258, "BD1"); b.silk(120, 388, "C2"); b.silk(120, 506, "C3"); b.silk(404, 332, "Q1"); b.silk(428, 446, "U1"); b.silk(566, 346, "T1"); b.silk(512, 532, "U2"); b.silk(612, 640, "CY1", { size: 10 }); b.silk(734, 116, "Q2"); b.silk(842, 116, "U3"); b.silk(744, 370, "C11"); b.silk(864, 370, "C12"); b.silk(780, 566, "J2"); b.silk(780, 440, "BOARD B STANDS HERE", { size: 11, weight: 400 }); b.silk(330, 636, "LATH65-M  V3  2331", { size: 12, weight: 400 });
  b.group("C2, C3", ["C2", "C3"]); b.group("C11, C12", ["C11", "C12"]);
  return { name: "lath65-a", label: "Drawing of the main board of the Quelvane Lath 65, top side", board: b };
}

function lath65B() {
  const b = new Board({ width: 800, height: 480, mask: "black" });
  b.pcb(40, 28, 712, 412, { holes: false });
  b.pour("M80 70h260v130H80zM430 210h260v170H430z"); b.bus(320, 210, 430, 260, 5); b.vias(90, 210, 200, 50, 16); b.vias(450, 230, 220, 40, 14);
  b.usbC("J1", 676, 160, { vertical: true });
  b.qfn("U4", 340, 190, { w: 92, h: 92, lines: ["KPD-318", "2327"], size: 16 });
  b.chip("Q3", 512, 160, { w: 76, h: 66, pins: 8, lines: ["YN40", "3R2"], size: 15, leads: 8 });
  b.chipResistor("R31", 512, 290, { w: 66, h: 36, lines: ["R005"], size: 17 });
  b.header("J3", 300, 392, 8); b.disc("RT1", 180, 300, 24, { lines: ["104"], fill: "#2f3b36", size: 12 });
  b.chip("U5", 176, 150, { w: 56, h: 44, pins: 6, lines: ["VRS-43"], size: 13 });
  b.passives(110, 220, 6, 2, 32, 24); b.passives(400, 340, 8, 2, 32, 26); b.passives(590, 260, 4, 2, 32, 26); b.passives(420, 92, 1, 5, 26, 24);
  b.silk(340, 128, "U4"); b.silk(512, 112, "Q3"); b.silk(512, 262, "R31"); b.silk(676, 116, "USB-C"); b.silk(300, 366, "J3"); b.silk(180, 276, "RT1", { size: 10 }); b.silk(176, 116, "U5"); b.silk(600, 420, "LATH65-C V2", { size: 12, weight: 400 });
  return { name: "lath65-b", label: "Drawing of the USB-C board of the Quelvane Lath 65, top side", board: b };
}

export const boards = [tor600A, tor600B, tor600C, drover1000A, drover1000B, lath65A, lath65B].map((draw) => draw());
