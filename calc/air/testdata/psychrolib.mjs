// Prints psychrolib.csv: moist air by the psychrolib library (npm, 1.1.1), an
// independent program of the ASHRAE Handbook of Fundamentals 2017, chapter 1.
//
//   npm install --prefix DIR psychrolib@1.1.1
//   node psychrolib.mjs DIR >psychrolib.csv
//
// The points are a Halton sequence (bases 2, 3, 5) over -10..50 C, 1..100 % RH and
// 0..3000 m, after the corners of that box. Numbers are printed in full.
import { createRequire } from "node:module";
import path from "node:path";

const require = createRequire(path.resolve(process.argv[2] ?? ".") + "/");
const psychrolib = require("psychrolib");
psychrolib.SetUnitSystem(psychrolib.SI);

function halton(index, base) {
  let value = 0;
  for (let digit = 1 / base, n = index; n > 0; n = Math.floor(n / base), digit /= base) {
    value += (n % base) * digit;
  }
  return value;
}

const points = [];
for (const t of [-10, 50]) {
  for (const rh of [0.01, 1]) {
    for (const h of [0, 3000]) points.push([t, rh, h]);
  }
}
for (let i = 1; i <= 600; i++) {
  points.push([
    Number((-10 + 60 * halton(i, 2)).toFixed(2)),
    Number((0.01 + 0.99 * halton(i, 3)).toFixed(4)),
    Math.round(3000 * halton(i, 5)),
  ]);
}

console.log("t_c,rh,altitude_m,pressure_pa,pws_pa,dew_point_c,humidity_ratio,wet_bulb_c,density_kg_m3");
for (const [t, rh, h] of points) {
  const p = psychrolib.GetStandardAtmPressure(h);
  const w = psychrolib.GetHumRatioFromRelHum(t, rh, p);
  console.log([
    t,
    rh,
    h,
    p,
    psychrolib.GetSatVapPres(t),
    psychrolib.GetTDewPointFromRelHum(t, rh),
    w,
    psychrolib.GetTWetBulbFromRelHum(t, rh, p),
    psychrolib.GetMoistAirDensity(t, w, p),
  ].join(","));
}
