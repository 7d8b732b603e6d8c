// Solves every *.inp here with the EPANET engine (npm epanet-js) and writes what it answers beside it, or compares.
//   npm install --no-save epanet-js@0.9.0 && node tests/published/epanet/remake.mjs [--write]
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { createRequire } from 'node:module';
import { fileURLToPath } from 'node:url';

const require = createRequire(join(process.cwd(), 'x.js'));
const { Project, Workspace, NodeProperty, LinkProperty, CountType } = require('epanet-js');
const here = dirname(fileURLToPath(import.meta.url));

async function solve(text) {
  const workspace = new Workspace();
  await workspace.loadModule?.();
  const model = new Project(workspace);
  workspace.writeFile('net.inp', text);
  model.open('net.inp', 'net.rpt', 'net.bin');
  model.solveH();
  const nodes = {}, pipes = {};
  for (let i = 1; i <= model.getCount(CountType.NodeCount); i++)
    nodes[model.getNodeId(i)] = { head_m: model.getNodeValue(i, NodeProperty.Head) };
  for (let i = 1; i <= model.getCount(CountType.LinkCount); i++)
    pipes[model.getLinkId(i)] = {
      flow_l_s: model.getLinkValue(i, LinkProperty.Flow),
      head_loss_m: model.getLinkValue(i, LinkProperty.Headloss),
    };
  const version = workspace.version;
  model.close();
  return { engine: `EPANET ${version}`, nodes, pipes };
}

const write = process.argv.includes('--write');
let unlike = 0;
for (const name of readdirSync(here).filter((n) => n.endsWith('.inp')).sort()) {
  const answer = await solve(readFileSync(join(here, name), 'utf8'));
  const file = join(here, name.replace('.inp', '.json'));
  const text = JSON.stringify(answer, null, 1) + '\n';
  if (write) writeFileSync(file, text);
  else if (readFileSync(file, 'utf8') !== text) { console.error(`${name}: the engine answers otherwise now`); unlike++; }
  console.log(name, answer.engine, Object.keys(answer.pipes).length, 'pipes');
}
process.exit(unlike ? 1 : 0);
