// A link as a QR code, drawn on the device.

import { encode } from "uqr";

const SVG = "http://www.w3.org/2000/svg";
const QUIET = 4; // empty modules around the code, as its standard asks

function path(rows) {
  let drawn = "";
  rows.forEach((row, y) => {
    for (let x = 0; x < row.length; x++) {
      const begun = x;
      while (row[x]) x++;
      if (x > begun) drawn += `M${begun} ${y}h${x - begun}v1h${begun - x}z`;
    }
  });
  return drawn;
}

function element(name, attributes) {
  const made = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
}

/** The code as an SVG element, black on white whatever the page wears; throws where there is none. */
export function code(link) {
  const { data, size } = encode(link, { ecc: "L", boostEcc: true, border: QUIET });
  const frame = { viewBox: `0 0 ${size} ${size}`, role: "img", "aria-label": "QR code of the link" };
  const svg = element("svg", { ...frame, class: "salt-code", "shape-rendering": "crispEdges" });
  svg.append(
    element("path", { fill: "#fff", d: `M0 0h${size}v${size}h${-size}z` }),
    element("path", { fill: "#000", d: path(data) }),
  );
  return svg;
}
