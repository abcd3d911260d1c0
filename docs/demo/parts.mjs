// Draws parts of a board as seen from above. Each part leaves behind where it lies, what is printed on it, and a point on its body
// that no print covers, so that callouts sit on the parts and the records can be checked against the drawing.

const masks = {
  green: { from: "#1d5344", to: "#123a30", edge: "#0d2b23", pour: "#22614f", trace: "#2c705c" },
  blue: { from: "#24477d", to: "#162f58", edge: "#0e1f3d", pour: "#2a5290", trace: "#3560a2" },
  black: { from: "#2b2e33", to: "#1a1c20", edge: "#0c0d0f", pour: "#34383e", trace: "#42474e" },
};

const round = (value) => Math.round(value * 100) / 100;
const escape = (text) => text.replace(/&/g, "&amp;").replace(/</g, "&lt;");

export class Board {
  constructor({ width, height, mask }) {
    this.width = width;
    this.height = height;
    this.mask = masks[mask];
    this.layers = { ground: [], part: [], silk: [] };
    this.parts = {};
    this.seed = 7;
  }

  // Always the same sequence, so that a drawing made again is the same file.
  random() {
    this.seed = (this.seed * 1103515245 + 12345) % 2147483648;
    return this.seed / 2147483648;
  }

  ground(svg) { this.layers.ground.push(svg); }
  draw(svg) { this.layers.part.push(svg); }

  note(ref, x, y, w, h, lines = [], pin = null) {
    this.parts[ref] = { x: x - w / 2, y: y - h / 2, w, h, pin: pin ?? [x + w / 2 - 4, y - h / 2 + 4], marking: lines.join("\n"), box: false };
  }

  group(ref, members, lines = null) {
    const all = members.map((name) => this.parts[name]);
    const left = Math.min(...all.map((p) => p.x)), top = Math.min(...all.map((p) => p.y));
    const right = Math.max(...all.map((p) => p.x + p.w)), bottom = Math.max(...all.map((p) => p.y + p.h));
    this.parts[ref] = { x: left - 3, y: top - 3, w: right - left + 6, h: bottom - top + 6, pin: [right, top], marking: lines?.join("\n") ?? all[0].marking, box: true };
    for (const name of members) delete this.parts[name];
  }

  text(x, y, text, { size = 10, fill = "#c3c9c7", weight = 400, anchor = "middle", rotate = 0 } = {}) {
    const turn = rotate ? ` transform="rotate(${rotate} ${x} ${y})"` : "";
    return `<text x="${round(x)}" y="${round(y)}" font-size="${size}" fill="${fill}" font-weight="${weight}" text-anchor="${anchor}"${turn}>${escape(text)}</text>`;
  }

  // "?" stands for a character that cannot be read: the record says so, the part shows a worn place.
  lines(x, y, lines, { size = 10, fill = "#c3c9c7", weight = 400, rotate = 0, sizes = null } = {}) {
    const pitch = size * 1.16, top = y - (pitch * (lines.length - 1)) / 2 + size * 0.35;
    const body = lines.map((line, i) => this.text(x, top + i * pitch, line.replace(/\?/g, "\u00a0"), { size: sizes?.[i] ?? size, fill, weight })).join("");
    return rotate ? `<g transform="rotate(${rotate} ${x} ${y})">${body}</g>` : body;
  }

  silk(x, y, text, options = {}) {
    this.layers.silk.push(this.text(x, y, text, { size: 11, fill: "#eef2ec", weight: 600, ...options }));
  }

  silkLine(path, width = 1.6, dash = "") {
    this.layers.ground.push(`<path d="${path}" fill="none" stroke="#e6ece4" stroke-width="${width}" opacity=".75"${dash ? ` stroke-dasharray="${dash}"` : ""}/>`);
  }

  shadow(x, y, w, h, r = 3, lift = 6) {
    return `<rect x="${round(x - w / 2 + lift)}" y="${round(y - h / 2 + lift)}" width="${w}" height="${h}" rx="${r}" fill="#04100c" opacity=".38"/>`;
  }

  pcb(x, y, w, h, { radius = 11, holes = true } = {}) {
    this.outline = { x, y, w, h };
    this.ground(`<rect x="${x + 8}" y="${y + 10}" width="${w}" height="${h}" rx="${radius}" fill="#6d7674" opacity=".55"/>`);
    this.ground(`<rect x="${x}" y="${y}" width="${w}" height="${h}" rx="${radius}" fill="url(#mask)" stroke="${this.mask.edge}" stroke-width="1.6"/>`);
    if (holes)
      for (const [hx, hy] of [[x + 24, y + 24], [x + w - 24, y + 24], [x + 24, y + h - 24], [x + w - 24, y + h - 24]])
        this.ground(`<circle cx="${hx}" cy="${hy}" r="14" fill="#c9a25f" stroke="#a67f3f"/><circle cx="${hx}" cy="${hy}" r="8" fill="#c3c7c4" stroke="#7b6a45" stroke-width="1.4"/>`);
  }

  pour(path) { this.ground(`<path d="${path}" fill="${this.mask.pour}"/>`); }

  traces(path, width = 2.2) { this.ground(`<path d="${path}" fill="none" stroke="${this.mask.trace}" stroke-width="${width}" stroke-linejoin="round" stroke-linecap="round"/>`); }

  // Runs of parallel tracks between two points, bent once: what fills a real board between its parts.
  bus(x1, y1, x2, y2, count, pitch = 5) {
    for (let i = 0; i < count; i++) {
      const o = i * pitch, bend = Math.min(Math.abs(x2 - x1), Math.abs(y2 - y1)) * Math.sign(x2 - x1 || 1);
      this.traces(`M${x1} ${y1 + o}L${x2 - bend} ${y1 + o}L${x2} ${y2 + o}`, 1.6);
    }
  }

  vias(x, y, w, h, count) {
    for (let i = 0; i < count; i++) {
      const vx = round(x + this.random() * w), vy = round(y + this.random() * h);
      this.ground(`<circle cx="${vx}" cy="${vy}" r="2.6" fill="#b8924f"/><circle cx="${vx}" cy="${vy}" r="1.2" fill="#20302b"/>`);
    }
  }

  slot(x, y, w, h) { this.ground(`<rect x="${x}" y="${y}" width="${w}" height="${h}" rx="${Math.min(w, h) / 2}" fill="#bfc4c2" stroke="${this.mask.edge}" stroke-width="1.3"/>`); }

  // Resistors and capacitors that no row of the table speaks of.
  passives(x, y, columns, rows, dx = 26, dy = 17) {
    for (let i = 0; i < columns; i++)
      for (let j = 0; j < rows; j++) {
        const px = x + i * dx, py = y + j * dy, dark = this.random() > 0.45;
        if (this.random() > 0.86) continue;
        this.draw(`<g transform="translate(${px} ${py})${this.random() > 0.6 ? " rotate(90)" : ""}"><path d="M-8-4.500h16v9h-16z" fill="#d4d8d4"/><path d="M-4.800-4.500h9.600v9h-9.600z" fill="${dark ? "#1d2022" : "#b09a72"}"/></g>`);
      }
  }

  chip(ref, x, y, { w = 60, h = 38, pins = 8, quad = false, lines = [], size = 9, leads = 8 }) {
    const side = quad ? pins / 4 : pins / 2, step = (w - 6) / side;
    let legs = "";
    for (let i = 0; i < side; i++) {
      const lx = round(x - w / 2 + 3 + step * (i + 0.5) - step * 0.27), lw = round(step * 0.54);
      legs += `M${lx} ${y - h / 2 - leads}h${lw}v${h + 2 * leads}h-${lw}z`;
      if (quad) {
        const stepY = (h - 6) / side, ly = round(y - h / 2 + 3 + stepY * (i + 0.5) - stepY * 0.27), lh = round(stepY * 0.54);
        legs += `M${x - w / 2 - leads} ${ly}v${lh}h${w + 2 * leads}v-${lh}z`;
      }
    }
    this.draw(`${this.shadow(x, y, w, h, 1, 3)}<path d="${legs}" fill="#cfd4d1" stroke="#8f9592" stroke-width=".5"/><rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="${h}" rx="1.5" fill="url(#epoxy)"/><rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="2.500" fill="#4a4f52" opacity=".7"/><circle cx="${x - w / 2 + 6.5}" cy="${y + h / 2 - 6.5}" r="2.600" fill="#15171a" stroke="#50565a" stroke-width=".7"/>`);
    this.draw(this.lines(x, y, lines, { size }));
    this.note(ref, x, y, w + (quad ? 2 * leads : 0), h + 2 * leads, lines, [x + w / 2 - 4, y - h / 2 + 4]);
  }

  // A leadless package with a metal edge.
  qfn(ref, x, y, { w = 44, h = 44, lines = [], size = 8 }) {
    let pads = "";
    for (let i = 0; i < 6; i++) {
      const o = round(-w / 2 + 5 + (i * (w - 10)) / 5 - 2), p = round(-h / 2 + 5 + (i * (h - 10)) / 5 - 2);
      pads += `M${x + o} ${y - h / 2 - 4}h4v${h + 8}h-4zM${x - w / 2 - 4} ${y + p}v4h${w + 8}v-4z`;
    }
    this.draw(`<path d="${pads}" fill="#d4d8d0"/><rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="${h}" fill="url(#epoxy)" stroke="#0e1011" stroke-width=".8"/><circle cx="${x - w / 2 + 6}" cy="${y + h / 2 - 6}" r="2" fill="#596065"/>`);
    this.draw(this.lines(x, y, lines, { size }));
    this.note(ref, x, y, w + 8, h + 8, lines, [x + w / 2 - 3, y - h / 2 + 3]);
  }

  // Transistors of 3 leads with their tabs on a heatsink; "up" puts the leads above the body.
  tab(ref, x, y, { lines, up = true, wide = false, size = 9.5 }) {
    const w = wide ? 62 : 50, body = wide ? 58 : 40, tabH = wide ? 8 : 26, s = up ? 1 : -1;
    const at = (dy, h) => (up ? y + dy : y - dy - h);
    const lead = [-1, 0, 1].map((i) => `<rect x="${x + i * (wide ? 19 : 15) - 3}" y="${at(-body / 2 - 24, 26)}" width="6" height="26" fill="#d7dbd8" stroke="#8f9592" stroke-width=".6"/><circle cx="${x + i * (wide ? 19 : 15)}" cy="${y - s * (body / 2 + 22)}" r="6" fill="#d9dcd6" stroke="#8b8f86" stroke-width=".8"/>`).join("");
    const plate = `<rect x="${x - w / 2}" y="${at(-body / 2, body + tabH)}" width="${w}" height="${body + tabH}" rx="2" fill="url(#steel)" stroke="#8d9391" stroke-width=".8"/>`;
    const screwY = y + s * (body / 2 + (wide ? -11 : 13));
    const mould = `<rect x="${x - w / 2}" y="${y - body / 2}" width="${w}" height="${body}" rx="1.500" fill="url(#epoxy)"/><rect x="${x - w / 2}" y="${y - body / 2}" width="${w}" height="2.500" fill="#4d5255" opacity=".8"/>`;
    const screw = `<circle cx="${x}" cy="${screwY}" r="8" fill="#9aa19f" stroke="#565d5f"/><path d="M${x - 5} ${screwY}h10M${x} ${screwY - 5}v10" stroke="#4c5254" stroke-width="1.8"/>`;
    this.draw(lead + plate + mould + screw + this.lines(x, wide ? y - s * 8 : y, lines, { size, fill: "#b9bfbd" }));
    const top = up ? y - body / 2 - 28 : y - body / 2 - tabH, height = body + tabH + 28;
    this.note(ref, x, top + height / 2, w, height, lines, [x + w / 2 - 6, y + s * (body / 2 - 5)]);
  }

  heatsink(x, y, w, h) {
    const across = w > h;
    this.draw(`<rect x="${x + 5}" y="${y + 7}" width="${w}" height="${h}" fill="#04100c" opacity=".4"/><rect x="${x}" y="${y}" width="${w}" height="${h}" fill="url(#${across ? "finsX" : "finsY"})" stroke="#15181a"/><rect x="${x}" y="${y}" width="${w}" height="${h}" fill="none" stroke="#6a7276" stroke-width=".8"/>`);
  }

  // An electrolytic seen from its top, printed there as surface-mounted cans are.
  can(ref, x, y, r, { lines, size = 9.5, sleeve = "#1c2b3d" }) {
    const cross = lines.length ? `<path d="M${x - r * 0.55} ${y + r * 0.62}h${r * 1.1}" stroke="#80888b" stroke-width="1.600"/>` : "";
    this.draw(`<circle cx="${x + r * 0.16}" cy="${y + r * 0.18}" r="${r}" fill="#04100c" opacity=".4"/><circle cx="${x}" cy="${y}" r="${r}" fill="${sleeve}"/><circle cx="${x}" cy="${y}" r="${r * 0.89}" fill="url(#can)" stroke="#8b9396" stroke-width=".8"/>${cross}<path d="M${x - r * 0.89} ${y}a${r * 0.89} ${r * 0.89} 0 0 1 ${round(r * 0.26)} ${round(-r * 0.63)}v${round(r * 1.26)}a${r * 0.89} ${r * 0.89} 0 0 1 ${round(-r * 0.26)} ${round(-r * 0.63)}z" fill="#20262b"/>`);
    this.draw(this.lines(x + r * 0.1, y - r * 0.08, lines, { size, fill: "#1f2529", weight: 600 }));
    this.note(ref, x, y, 2 * r, 2 * r, lines, [x + r * 0.55, y - r * 0.62]);
  }

  // A large electrolytic lying on its side, print upwards.
  lyingCan(ref, x, y, w, h, { lines, size = 13, sleeve = "#20242b", stripe = "#c9a65a" }) {
    const l = x - w / 2, t = y - h / 2;
    this.draw(`${this.shadow(x, y, w, h, 14, 8)}<rect x="${l}" y="${t}" width="${w}" height="${h}" rx="13" fill="${sleeve}"/><rect x="${l}" y="${t}" width="${w}" height="${h}" rx="13" fill="url(#roundY)"/><rect x="${l + 14}" y="${t}" width="3" height="${h}" fill="#000" opacity=".35"/><rect x="${l + 10}" y="${t + h * 0.76}" width="${w - 20}" height="${h * 0.13}" fill="${stripe}"/>`);
    for (let i = 0; i < 4; i++) this.draw(`<rect x="${l + w * (0.2 + i * 0.19)}" y="${t + h * 0.815}" width="12" height="2.600" fill="${sleeve}"/>`);
    this.draw(`<rect x="${l - 16}" y="${y - 14}" width="17" height="5" fill="#d7dbd8"/><rect x="${l - 16}" y="${y + 9}" width="17" height="5" fill="#d7dbd8"/>`);
    this.draw(this.lines(x + 6, y - h * 0.1, lines, { size, fill: "#efe3c4", weight: 600 }));
    this.note(ref, x, y, w, h, lines, [x + w / 2 - 10, y - h / 2 + 9]);
  }

  transformer(ref, x, y, w, h, { lines, size = 13, tape = "tape" }) {
    const l = x - w / 2, t = y - h / 2;
    let pins = "";
    for (let i = 0; i < 5; i++) pins += `<circle cx="${l + 24 + (i * (w - 48)) / 4}" cy="${t - 5}" r="6" fill="#d9dcd6" stroke="#8b8f86"/><circle cx="${l + 24 + (i * (w - 48)) / 4}" cy="${t + h + 5}" r="6" fill="#d9dcd6" stroke="#8b8f86"/>`;
    const bw = w * 0.66;
    this.draw(`${this.shadow(x, y, w, h, 4, 10)}${pins}<rect x="${l}" y="${t + h * 0.09}" width="${w}" height="${h * 0.82}" rx="3" fill="#34383b" stroke="#191c1e"/><rect x="${l}" y="${t + h * 0.09}" width="${w}" height="6" fill="#565c60"/><path d="M${l + w * 0.12} ${t + h * 0.09}v${h * 0.82}M${l + w * 0.88} ${t + h * 0.09}v${h * 0.82}" stroke="#1f2224" stroke-width="2"/><rect x="${x - bw / 2}" y="${t}" width="${bw}" height="${h}" rx="5" fill="#b3763c"/><rect x="${x - bw / 2}" y="${t + 6}" width="${bw}" height="${h - 12}" rx="4" fill="url(#${tape})" stroke="#8d6412" stroke-width=".8"/>`);
    for (let i = 1; i < 4; i++) this.draw(`<path d="M${x - bw / 2} ${round(t + 6 + ((h - 12) * i) / 4)}h${bw}" stroke="#8d6412" stroke-width=".8" opacity=".55"/>`);
    this.draw(`<rect x="${x - bw / 2 + 8}" y="${y - (lines.length * size * 1.2) / 2 - 6}" width="${bw - 16}" height="${lines.length * size * 1.2 + 12}" fill="#f3ecd6" opacity=".9"/>`);
    this.draw(this.lines(x, y, lines, { size, fill: "#2a2a26", weight: 600 }));
    this.note(ref, x, y, w, h + 18, lines, [x + w / 2 - 9, t + h * 0.09 + 12]);
  }

  toroid(ref, x, y, r, { core = "#6b7f52", wire = "#c9854a", lines = [] } = {}) {
    const mid = r * 0.68, thick = r * 0.56;
    let turns = "";
    for (let i = 0; i < 34; i++) {
      const a = ((i + 2) / 38) * Math.PI * 2, inner = mid - thick * 0.62, outer = mid + thick * 0.62;
      turns += `M${round(x + Math.cos(a) * inner)} ${round(y + Math.sin(a) * inner)}L${round(x + Math.cos(a + 0.05) * outer)} ${round(y + Math.sin(a + 0.05) * outer)}`;
    }
    this.draw(`<circle cx="${x + 7}" cy="${y + 8}" r="${mid}" fill="none" stroke="#04100c" stroke-width="${thick * 1.2}" opacity=".35"/><circle cx="${x}" cy="${y}" r="${mid}" fill="none" stroke="${core}" stroke-width="${thick}"/><path d="${turns}" stroke="#7c4a1e" stroke-width="7.500" stroke-linecap="round"/><path d="${turns}" stroke="${wire}" stroke-width="5.200" stroke-linecap="round"/><path d="${turns}" stroke="#ecc094" stroke-width="1.300" stroke-linecap="round" opacity=".7"/>`);
    this.note(ref, x, y, 2 * r, 2 * r, lines, [x + mid * 0.72, y - mid * 0.72]);
  }

  bladeFuse(ref, x, y, { lines, body = "#1fa3a0", light = "#56c8c3", dark = "#137472", scale = 1 }) {
    const w = 66 * scale, h = 60 * scale, l = x - w / 2, t = y - h / 2;
    this.draw(`${this.shadow(x, y, w + 16, h + 14, 3, 6)}<rect x="${l - 8}" y="${t - 7}" width="${w + 16}" height="${h + 14}" rx="2" fill="#191b1c"/><rect x="${l - 3}" y="${t - 2}" width="${w + 6}" height="${h + 4}" fill="#2f3334"/><rect x="${l}" y="${t}" width="${w}" height="${h}" rx="4" fill="${body}"/><rect x="${l}" y="${t}" width="${w}" height="${h * 0.2}" rx="4" fill="${light}"/><rect x="${l + w * 0.16}" y="${t + h * 0.3}" width="${w * 0.68}" height="${h * 0.56}" rx="3" fill="${dark}"/><rect x="${l + 4}" y="${t + h * 0.34}" width="5" height="${h * 0.5}" fill="#d8dcd8"/><rect x="${l + w - 9}" y="${t + h * 0.34}" width="5" height="${h * 0.5}" fill="#d8dcd8"/>`);
    this.draw(this.lines(x, t + h * 0.58, lines, { size: 24 * scale, fill: "#eaf6f3", weight: 700 }));
    this.note(ref, x, y, w + 16, h + 14, lines, [x + w / 2 - 8, t + 6]);
  }

  cartridge(ref, x, y, w, h, { lines, size = 9, ceramic = false }) {
    const l = x - w / 2, t = y - h / 2, cap = w * 0.2;
    this.draw(`${this.shadow(x, y, w, h, 5, 5)}<rect x="${l}" y="${t}" width="${w}" height="${h}" rx="5" fill="${ceramic ? "#e6e2d6" : "#cfe0e3"}" opacity="${ceramic ? 1 : 0.85}"/><rect x="${l}" y="${t}" width="${w}" height="${h}" rx="5" fill="url(#roundY)" opacity=".6"/>${ceramic ? "" : `<path d="M${l + cap} ${y + h * 0.28}H${l + w - cap}" stroke="#8f8a72" stroke-width="1.400"/>`}<rect x="${l}" y="${t}" width="${cap}" height="${h}" rx="4" fill="url(#steelX)"/><rect x="${l + w - cap}" y="${t}" width="${cap}" height="${h}" rx="4" fill="url(#steelX)"/><rect x="${l - 12}" y="${y - h * 0.42}" width="12" height="${h * 0.84}" fill="#c5a35b"/><rect x="${l + w}" y="${y - h * 0.42}" width="12" height="${h * 0.84}" fill="#c5a35b"/>`);
    this.draw(this.lines(x, y - h * 0.04, lines, { size, fill: "#23282b", weight: 600 }));
    this.note(ref, x, y, w + 24, h, lines, [x + w / 2 - cap / 2, t + 5]);
  }

  // A radial fuse: a small brown cylinder, print on its top.
  stubFuse(ref, x, y, w, h, { lines, size = 11 }) {
    this.draw(`${this.shadow(x, y, w, h, 8, 6)}<rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="${h}" rx="8" fill="#5a2f22"/><rect x="${x - w / 2 + 4}" y="${y - h / 2 + 4}" width="${w - 8}" height="${h - 8}" rx="6" fill="#744031"/>`);
    this.draw(this.lines(x, y, lines, { size, fill: "#f0e0cf", weight: 600 }));
    this.note(ref, x, y, w, h, lines, [x + w / 2 - 5, y - h / 2 + 5]);
  }

  chipFuse(ref, x, y, { w = 40, h = 22, lines, size = 11, body = "#f0eee6", ink = "#2a2d2e" }) {
    this.draw(`<rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="${h}" fill="${body}" stroke="#9b9a90" stroke-width=".7"/><rect x="${x - w / 2}" y="${y - h / 2}" width="${w * 0.18}" height="${h}" fill="#d2d6d2"/><rect x="${x + w / 2 - w * 0.18}" y="${y - h / 2}" width="${w * 0.18}" height="${h}" fill="#d2d6d2"/>`);
    this.draw(this.lines(x, y, lines, { size, fill: ink, weight: 700 }));
    this.note(ref, x, y, w, h, lines, [x + w / 2 - 3, y - h / 2 + 3]);
  }

  chipResistor(ref, x, y, { w = 40, h = 22, lines, size = 11 }) {
    this.chipFuse(ref, x, y, { w, h, lines, size, body: "#1d2022", ink: "#e8ece8" });
  }

  strip(ref, x, y, w, h, { lines, size = 12 }) {
    this.draw(`${this.shadow(x, y, w, h, 1, 4)}<rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="${h}" fill="#7d6a4c"/><rect x="${x - w / 2}" y="${y - h / 2}" width="${w * 0.2}" height="${h}" fill="url(#steel)"/><rect x="${x + w / 2 - w * 0.2}" y="${y - h / 2}" width="${w * 0.2}" height="${h}" fill="url(#steel)"/>`);
    this.draw(this.lines(x, y, lines, { size, fill: "#f0e8d8", weight: 600 }));
    this.note(ref, x, y, w, h, lines, [x + w / 2 - 8, y - h / 2 + 6]);
  }

  block(ref, x, y, w, h, { lines, fill = "#e2b93a", edge = "#a8841b", light = "#f0d06c", ink = "#3b2f08", size = 12 }) {
    this.draw(`${this.shadow(x, y, w, h, 3, 7)}<rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="${h}" rx="3" fill="${fill}" stroke="${edge}"/><rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="8" rx="3" fill="${light}"/>`);
    this.draw(this.lines(x, y + 3, lines, { size, fill: ink, weight: 600 }));
    this.note(ref, x, y, w, h, lines, [x + w / 2 - 7, y - h / 2 + 6]);
  }

  disc(ref, x, y, r, { lines, fill = "#2d5fa0", ink = "#e7eef8", size = 9 }) {
    this.draw(`<ellipse cx="${x + 5}" cy="${y + 6}" rx="${r}" ry="${r * 0.72}" fill="#04100c" opacity=".38"/><ellipse cx="${x}" cy="${y}" rx="${r}" ry="${r * 0.72}" fill="${fill}"/><ellipse cx="${x - r * 0.28}" cy="${y - r * 0.28}" rx="${r * 0.42}" ry="${r * 0.2}" fill="#fff" opacity=".22"/>`);
    this.draw(this.lines(x, y, lines, { size, fill: ink, weight: 600 }));
    this.note(ref, x, y, 2 * r, 1.44 * r, lines, [x + r * 0.72, y - r * 0.42]);
  }

  optocoupler(ref, x, y, { lines, size = 8.5 }) {
    let pins = "";
    for (const dy of [-10, 10]) pins += `<rect x="${x - 34}" y="${y + dy - 4}" width="68" height="8" fill="#cfd4d1"/>`;
    this.draw(`${pins}${this.shadow(x, y, 48, 40, 2, 4)}<rect x="${x - 24}" y="${y - 20}" width="48" height="40" rx="1.500" fill="#ece9df" stroke="#a7a294"/><circle cx="${x - 17}" cy="${y + 13}" r="2.500" fill="#bdb8a9"/>`);
    this.draw(this.lines(x, y, lines, { size, fill: "#4a463d", weight: 600 }));
    this.note(ref, x, y, 68, 40, lines, [x + 20, y - 16]);
  }

  inductor(ref, x, y, w, { lines, size = 14 }) {
    this.draw(`${this.shadow(x, y, w, w, 4, 6)}<rect x="${x - w / 2}" y="${y - w / 2}" width="${w}" height="${w}" rx="5" fill="#43484b" stroke="#23272a"/><rect x="${x - w / 2 + 4}" y="${y - w / 2 + 4}" width="${w - 8}" height="${w - 8}" rx="9" fill="#565c60"/>`);
    this.draw(this.lines(x, y, lines, { size, fill: "#e4e7e4", weight: 700 }));
    this.note(ref, x, y, w, w, lines, [x + w / 2 - 7, y - w / 2 + 7]);
  }

  choke(ref, x, y, w, h, { lines = [], size = 10 }) {
    this.draw(`${this.shadow(x, y, w, h, 5, 8)}<rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="${h}" rx="5" fill="#2a2d30" stroke="#14171a"/>`);
    for (const side of [-1, 1]) {
      const cx = x + (side * w) / 4;
      this.draw(`<rect x="${cx - w * 0.18}" y="${y - h * 0.44}" width="${w * 0.36}" height="${h * 0.88}" rx="6" fill="#a9662f"/>`);
      for (let i = 0; i < 9; i++) this.draw(`<path d="M${cx - w * 0.18} ${round(y - h * 0.4 + (i * h * 0.8) / 8)}h${w * 0.36}" stroke="#e0a566" stroke-width="2.400"/>`);
    }
    if (lines.length) {
      this.draw(`<rect x="${x - w * 0.44}" y="${y - size}" width="${w * 0.88}" height="${size * 2}" fill="#f0e9d2"/>` + this.lines(x, y, lines, { size, fill: "#2a2a26", weight: 600 }));
    }
    this.note(ref, x, y, w, h, lines, [x + w / 2 - 4, y - h / 2 + 4]);
  }

  lug(ref, x, y) {
    this.draw(`${this.shadow(x, y, 72, 72, 3, 5)}<rect x="${x - 36}" y="${y - 36}" width="72" height="72" fill="#d3d6d0" stroke="#9b9f97"/><circle cx="${x}" cy="${y}" r="27" fill="url(#steel)" stroke="#8d9391"/><path d="M${x - 16} ${y - 9}L${x} ${y - 18.5}L${x + 16} ${y - 9}V${y + 9}L${x} ${y + 18.5}L${x - 16} ${y + 9}z" fill="#a3a9aa" stroke="#777e80"/><circle cx="${x}" cy="${y}" r="8" fill="#8b9294"/>`);
    this.note(ref, x, y, 72, 72, [], [x + 28, y - 28]);
  }

  terminal(ref, x, y, w, h, ways, { fill = "#2f8f62", edge = "#1b5c3e" } = {}) {
    const down = h > w;
    let screws = "";
    for (let i = 0; i < ways; i++) {
      const o = ((i + 0.5) / ways - 0.5) * (down ? h : w), cx = down ? x : x + o, cy = down ? y + o : y;
      screws += `<circle cx="${cx}" cy="${cy}" r="11" fill="${edge}"/><circle cx="${cx}" cy="${cy}" r="8" fill="#b9bfbd"/><path d="M${cx - 6} ${cy - 3}l12 6" stroke="#4a5154" stroke-width="2.600"/>`;
    }
    this.draw(`${this.shadow(x, y, w, h, 2, 7)}<rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="${h}" rx="2" fill="${fill}" stroke="${edge}"/>${screws}`);
    this.note(ref, x, y, w, h, []);
  }

  usbC(ref, x, y, { vertical = false } = {}) {
    const w = vertical ? 44 : 66, h = vertical ? 66 : 44;
    this.draw(`${this.shadow(x, y, w, h, 3, 5)}<rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="${h}" rx="4" fill="url(#steel)" stroke="#7d8482"/><rect x="${x - w / 2 + 8}" y="${y - h / 2 + 8}" width="${w - 16}" height="${h - 16}" rx="7" fill="none" stroke="#8e9593"/>`);
    this.note(ref, x, y, w, h, []);
  }

  usbA(ref, x, y) {
    this.draw(`${this.shadow(x, y, 84, 74, 2, 6)}<rect x="${x - 42}" y="${y - 37}" width="84" height="74" rx="2" fill="url(#steel)" stroke="#7d8482"/><path d="M${x - 24} ${y - 10}h14v18h-14zM${x + 10} ${y - 10}h14v18h-14z" fill="#9aa19f" stroke="#757c7a"/>`);
    this.note(ref, x, y, 84, 74, []);
  }

  header(ref, x, y, ways, { down = false } = {}) {
    const length = ways * 17 + 10, w = down ? 30 : length, h = down ? length : 30;
    let pins = "";
    for (let i = 0; i < ways; i++) {
      const o = (i - (ways - 1) / 2) * 17;
      pins += `<rect x="${(down ? x : x + o) - 3.5}" y="${(down ? y + o : y) - 3.5}" width="7" height="7" fill="#d8c27a"/>`;
    }
    this.draw(`${this.shadow(x, y, w, h, 2, 4)}<rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="${h}" rx="2" fill="#efece0" stroke="#a9a595"/><rect x="${x - w / 2 + 4}" y="${y - h / 2 + 4}" width="${w - 8}" height="${h - 8}" fill="#d9d5c4"/>${pins}`);
    this.note(ref, x, y, w, h, []);
  }

  module(x, y, w, h, label) {
    this.draw(`${this.shadow(x, y, w, h, 3, 9)}<rect x="${x - w / 2}" y="${y - h / 2}" width="${w}" height="${h}" rx="3" fill="#1f3558" stroke="#0e1b31"/>`);
    for (let i = 0; i < Math.floor((w - 20) / 12); i++) this.draw(`<rect x="${x - w / 2 + 11 + i * 12}" y="${y + h / 2 - 10}" width="7" height="9" fill="#c9a25f"/>`);
    this.draw(this.text(x + w / 2 - 8, y - h / 2 + 13, label, { size: 9, fill: "#dfe7f2", anchor: "end" }));
  }

  // Marks that somebody took off a part: a scoured patch over the print.
  scour(x, y, w, h) {
    let scratches = "";
    for (let i = 0; i < 40; i++) {
      const sx = x - w / 2 + this.random() * w * 0.75, sy = y - h / 2 + this.random() * h;
      scratches += `M${round(sx)} ${round(sy)}l${round(w * 0.1 + this.random() * w * 0.15)} ${round((this.random() - 0.5) * h * 0.4)}`;
    }
    this.draw(`<path d="${scratches}" stroke="#8a9092" stroke-width=".9" opacity=".55"/>`);
  }

  svg(label) {
    const { width, height, mask } = this;
    return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escape(label)}" font-family="DejaVu Sans Mono, monospace">
<defs>
<linearGradient id="mask" x1="0" y1="0" x2="1" y2="1"><stop offset="0" stop-color="${mask.from}"/><stop offset="1" stop-color="${mask.to}"/></linearGradient>
<linearGradient id="epoxy" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#303437"/><stop offset=".2" stop-color="#25282b"/><stop offset="1" stop-color="#1c1f21"/></linearGradient>
<linearGradient id="steel" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#e4e6e4"/><stop offset=".5" stop-color="#c9cdcb"/><stop offset="1" stop-color="#b1b6b5"/></linearGradient>
<linearGradient id="steelX" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#9aa09e"/><stop offset=".3" stop-color="#eef0ee"/><stop offset="1" stop-color="#868d8b"/></linearGradient>
<radialGradient id="can" cx=".4" cy=".35" r=".75"><stop offset="0" stop-color="#e6eaea"/><stop offset=".6" stop-color="#b7bdbf"/><stop offset="1" stop-color="#868e92"/></radialGradient>
<linearGradient id="roundY" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#000" stop-opacity=".35"/><stop offset=".28" stop-color="#fff" stop-opacity=".22"/><stop offset=".55" stop-color="#fff" stop-opacity="0"/><stop offset="1" stop-color="#000" stop-opacity=".45"/></linearGradient>
<linearGradient id="tape" x1="0" y1="0" x2="1" y2="0"><stop offset="0" stop-color="#b98a1d"/><stop offset=".45" stop-color="#e6bd4c"/><stop offset="1" stop-color="#a87a14"/></linearGradient>
<linearGradient id="tapeBlue" x1="0" y1="0" x2="1" y2="0"><stop offset="0" stop-color="#34608f"/><stop offset=".45" stop-color="#6c9bcb"/><stop offset="1" stop-color="#2c5480"/></linearGradient>
<pattern id="finsY" width="40" height="9" patternUnits="userSpaceOnUse"><rect width="40" height="9" fill="#2b3033"/><rect width="40" height="4" fill="#3d4448"/><rect width="40" height="1" fill="#596266"/></pattern>
<pattern id="finsX" width="9" height="40" patternUnits="userSpaceOnUse"><rect width="9" height="40" fill="#2b3033"/><rect width="4" height="40" fill="#3d4448"/><rect width="1" height="40" fill="#596266"/></pattern>
<pattern id="mat" width="80" height="80" patternUnits="userSpaceOnUse"><rect width="80" height="80" fill="#bfc4c2"/><path d="M40 0v80M0 40h80" stroke="#b2b8b6"/></pattern>
</defs>
<rect width="${width}" height="${height}" fill="url(#mat)"/>
${this.layers.ground.join("\n")}
${this.layers.part.join("\n")}
${this.layers.silk.join("\n")}
</svg>
`;
  }

  anchors() {
    const x = (value) => Math.round((value / this.width) * 10000) / 10000, y = (value) => Math.round((value / this.height) * 10000) / 10000;
    return Object.fromEntries(Object.entries(this.parts).map(([ref, p]) => [ref, {
      x: x(p.x), y: y(p.y), width: x(p.w), height: y(p.h), pin_x: x(p.pin[0]), pin_y: y(p.pin[1]), is_group: p.box, marking: p.marking,
    }]));
  }
}
