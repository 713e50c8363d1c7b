import { type Program, tables } from '@duskwatch/core';
import { writeTable } from '../table/write-table.ts';
import { DATA_PACKAGE_FILE, dataPackage, tablesToWrite } from './data-package.ts';

/** What a program folder holds: its CSV files and the description of the Data Package, by name. */
export function programFiles(program: Program): Map<string, string> {
  const files = new Map(tablesToWrite(program).map((kind) => [tables[kind].file, writeTable(kind, program[kind])]));
  return files.set(DATA_PACKAGE_FILE, `${JSON.stringify(dataPackage(program), null, 2)}\n`);
}
