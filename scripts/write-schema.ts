import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { dishReportJsonSchema } from '../src/adapters/exchange/dish-report-schema.ts';

/** Writes docs/dish-report.schema.json from its source. */
writeFileSync(join(import.meta.dirname, '../docs/dish-report.schema.json'), `${JSON.stringify(dishReportJsonSchema(), null, 2)}\n`);
