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
  for (let i = 0; i < calls; i++) once(i);
  let least = Infinity;
  for (let round = 0; round < 10; round++) {
    const start = process.hrtime.bigint();
    for (let i = 0; i < calls; i++) once(i);
    least = Math.min(least, Number(process.hrtime.bigint() - start) / calls);
  }
  return least;
}

// What each line times, opening and reading the file never being part of it:
//   first   prepared before; flows from the solver's own start    initH(10), runH     restart, solve
//   again   from the flow before; 3.0 and 3.1 L/s by turns        initH(0), runH      solve
//   whole   ordering, solving, handing over                       openH to closeH     solve_network
const inlet = model.getNodeIndex('IN');
const whole = timed(() => { model.openH(); model.initH(10); model.runH(); model.closeH(); }, 200);
model.openH();
const first = timed(() => { model.initH(10); model.runH(); }, 500);
const again = timed((i) => {
  model.setBaseDemand(inlet, 1, i % 2 ? -3.1 : -3.0);
  model.initH(0);
  model.runH();
}, 500);
model.closeH();
model.close();

const answer = JSON.parse(execFileSync(process.argv[2], [
  '--benchmark_filter=^twelve_circuits_(first|again|whole)$', '--benchmark_repetitions=10',
  '--benchmark_format=json',
], { stdio: ['ignore', 'pipe', 'ignore'] }));
const runs = answer.benchmarks.filter((b) => b.run_type === 'iteration');
for (const [name, engine] of Object.entries({ first, again, whole })) {
  const ours = 1000 * Math.min(...runs.filter((b) => b.name === `twelve_circuits_${name}`)
    .map((b) => b.real_time)); // printed in microseconds
  console.log(`${name}  EPANET ${engine.toFixed(0)} ns, ours ${ours.toFixed(0)} ns: ${(engine / ours).toFixed(1)} times`);
}
