// Draws the pictures of the demo: node docs/demo/draw.mjs
// Writes the SVG files beside this script, and into src/Catalogue.Web/Demo/Pictures what is embedded: the pictures as pixels and the places
// of the parts as fractions of each picture. Needs Chromium (or CHROMIUM=path); the build of the product needs neither.
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { boards } from "./boards.mjs";
import { products } from "./products.mjs";

const here = dirname(fileURLToPath(import.meta.url));
const out = join(here, "../../src/Catalogue.Web/Demo/Pictures");
const scratch = mkdtempSync(join(tmpdir(), "demo-drawings-"));

// The page draws the SVG on a canvas and hands the encoded picture back as its only text.
function rasterise(svg, width, height, type, quality) {
  const page = join(scratch, "page.html");
  writeFileSync(page, `<!doctype html><meta charset="utf-8"><body><script>
    const image = new Image();
    image.onload = () => {
      const canvas = Object.assign(document.createElement("canvas"), { width: ${width}, height: ${height} });
      canvas.getContext("2d").drawImage(image, 0, 0, ${width}, ${height});
      document.body.textContent = canvas.toDataURL(${JSON.stringify(type)}, ${quality});
    };
    image.src = "data:image/svg+xml;base64,${Buffer.from(svg.replace("<svg ", `<svg width="${width}" height="${height}" `)).toString("base64")}";
  </script>`);
  const dom = execFileSync(process.env.CHROMIUM ?? "chromium",
    ["--headless", "--no-sandbox", "--disable-gpu", `--user-data-dir=${join(scratch, "profile")}`, "--virtual-time-budget=8000", "--dump-dom", pathToFileURL(page).href],
    { maxBuffer: 64 * 1024 * 1024, stdio: ["ignore", "pipe", "ignore"] }).toString();
  const data = /base64,([A-Za-z0-9+/=]+)/.exec(dom);
  if (!data || !dom.includes(`data:${type}`)) throw new Error("Chromium gave no picture.");
  return Buffer.from(data[1], "base64");
}

const only = process.argv.slice(2);
const anchors = {};
try {
  for (const { name, label, board } of boards) {
    anchors[name] = board.anchors();
    if (only.length && !only.includes(name)) continue;
    const svg = board.svg(label);
    writeFileSync(join(here, `${name}.svg`), svg);
    const width = 2000, height = Math.round((2000 * board.height) / board.width);
    const bytes = rasterise(svg, width, height, "image/jpeg", 0.85);
    writeFileSync(join(out, `${name}.jpg`), bytes);
    console.log(`${name}.jpg ${width} x ${height}, ${Math.round(bytes.length / 1024)} kB`);
  }
  for (const { name, width, height, svg, anchors: places } of products) {
    anchors[name] = places;
    if (only.length && !only.includes(name)) continue;
    writeFileSync(join(here, `${name}.svg`), svg);
    const bytes = rasterise(svg, 1600, Math.round((1600 * height) / width), "image/png", 1);
    writeFileSync(join(out, `${name}.png`), bytes);
    console.log(`${name}.png 1600 x ${Math.round((1600 * height) / width)}, ${Math.round(bytes.length / 1024)} kB`);
  }
  writeFileSync(join(out, "anchors.json"), JSON.stringify(anchors, null, 1) + "\n");
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
