// Times the twelve-circuit network in the EPANET engine (npm epanet-js) and in ours, in one run, and prints both.
//   npm install --no-save epanet-js@0.9.0 && node tests/bench/epanet_ratio.mjs build-bench/tests/underlawn_bench
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const require = createRequire(join(process.cwd(), 'x.js'));
const { Project, Workspace } = require('epanet-js');
const here = dirname(fileURLToPath(import.meta.url));
const network = join(here, '../published/epanet/twelve_stepped_reverse.inp');

const workspace = new Workspace();
await workspace.loadModule?.();
const model = new Project(workspace);
workspace.writeFile('net.inp', readFileSync(network, 'utf8'));
model.open('net.inp', 'net.rpt', 'net.bin');

// ns a call: the least of ten rounds, so that other work on the machine counts little.
function timed(once, calls) {
  for (let i = 0; i < calls; i++) once();
  let least = Infinity;
  for (let round = 0; round < 10; round++) {
    const start = process.hrtime.bigint();
    for (let i = 0; i < calls; i++) once();
    least = Math.min(least, Number(process.hrtime.bigint() - start) / calls);
  }
  return least;
}

const whole = timed(() => model.solveH(), 200); // orders the nodes and solves, as ours does
model.openH();
const again = timed(() => { model.initH(10); model.runH(); }, 500); // nodes ordered before
model.closeH();
model.close();

const answer = JSON.parse(execFileSync(process.argv[2], [
  '--benchmark_filter=^flow_of_twelve_circuits$', '--benchmark_repetitions=10', '--benchmark_format=json',
], { stdio: ['ignore', 'pipe', 'ignore'] }));
const runs = answer.benchmarks.filter((b) => b.run_type === 'iteration');
const ours = 1000 * Math.min(...runs.map((b) => b.real_time)); // printed in microseconds
console.log(`EPANET solveH     ${whole.toFixed(0)} ns`);
console.log(`EPANET runH       ${again.toFixed(0)} ns`);
console.log(`solve_network     ${ours.toFixed(0)} ns`);
console.log(`ratio             ${(whole / ours).toFixed(1)} to solveH, ${(again / ours).toFixed(1)} to runH`);
