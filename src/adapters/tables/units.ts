import { readFileSync } from 'node:fs';
import { unitTable, type Unit, type UnitTable } from '../../core/quantity/index.ts';
import { compiledFile } from './folder.ts';

/** Reads the compiled units from dist/tables/. */
export function readUnitTable(): UnitTable {
  return unitTable(JSON.parse(readFileSync(compiledFile('units.json'), 'utf8')) as Unit[]);
}
