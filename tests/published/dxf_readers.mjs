// SPDX-License-Identifier: GPL-3.0-or-later
// Reads a DXF file that Underlawn wrote with two readers of the npm registry, and prints what each found by layer and
// kind. Run by hand; seen on 2026-11-26 with dxf-parser 1.1.2 and dxf 5.3.1: the same counts from both.
//   npm install dxf-parser dxf && node dxf_readers.mjs plan.dxf
import fs from 'fs';
import parser from 'dxf-parser';
import { Helper } from 'dxf';

const text = fs.readFileSync(process.argv[2], 'utf8');
const count = (entities) => {
  const by = {};
  for (const e of entities) by[`${e.layer} ${e.type}`] = (by[`${e.layer} ${e.type}`] || 0) + 1;
  return by;
};
const Parser = parser.default || parser;
const first = count(new Parser().parseSync(text).entities);
const second = count(new Helper(text).parsed.entities);
console.log(first);
const same = JSON.stringify(Object.entries(first).sort()) === JSON.stringify(Object.entries(second).sort());
console.log(same ? 'both readers agree' : second);
process.exit(same ? 0 : 1);
