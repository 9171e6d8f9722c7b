// Times moist air in the reference library. Prints name and nanoseconds a call, the
// median of seven.
import { createRequire } from "node:module";
import path from "node:path";

const require = createRequire(path.resolve(process.argv[2] ?? ".") + "/");
const psychrolib = require("psychrolib");
psychrolib.SetUnitSystem(psychrolib.SI);

function median(call, n = 20000) {
  const times = [];
  for (let i = 0; i < 7; i++) {
    const start = process.hrtime.bigint();
    for (let k = 0; k < n; k++) call(20 + (k % 100) / 10);
    times.push(Number(process.hrtime.bigint() - start) / n);
  }
  return times.sort((a, b) => a - b)[3];
}

console.log("DewPoint", median((t) => psychrolib.GetTDewPointFromRelHum(t, 0.5)));
console.log("WetBulb", median((t) => psychrolib.GetTWetBulbFromRelHum(t, 0.5, 101325)));
