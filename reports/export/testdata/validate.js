// Holds a Data Package against the published standard (Frictionless Data, version 1)
// with the standard's own general-purpose modules, datapackage and tableschema.
//
//   node validate.js MODULE datapackage.json
//
// MODULE is the folder of the module datapackage. What is wrong is printed as one JSON
// object: faults, and how many tables, rows and references to other tables were seen.
"use strict";

const { createRequire } = require("module");
const path = require("path");
const from = createRequire(path.join(path.resolve(process.argv[2]), "package.json"));
const { Package } = from("./lib");
const { Schema } = from("tableschema");

async function main() {
  const out = { faults: [], tables: 0, rows: 0, references: 0 };
  const say = (where, e) => {
    const all = e.errors && e.errors.length ? e.errors : [e];
    all.slice(0, 5).forEach(x => out.faults.push(where + ": " + x.message));
  };
  const p = await Package.load(process.argv[3]);
  p.errors.forEach(e => say("package", e));
  for (const r of p.resources) {
    out.tables++;
    r.errors.forEach(e => say(r.name, e));
    if (r.descriptor.schema) {
      (await Schema.load(r.descriptor.schema)).errors.forEach(e => say(r.name + ", schema", e));
    }
    if (r.descriptor.format !== "csv") { continue; }
    try {
      out.rows += (await r.read({ cast: true })).length;
      await r.checkRelations();
      out.references += (r.descriptor.schema.foreignKeys || []).length;
    } catch (e) {
      say(r.name, e);
    }
  }
  console.log(JSON.stringify(out));
}

main().catch(e => { console.log(JSON.stringify({ faults: ["not read: " + e.message], tables: 0, rows: 0, references: 0 })); });
