// Prints the median and p99 of each benchmark from vitest's JSON, and how many times slower than the quickest of its group.
import { readFileSync } from 'node:fs';
import { relative } from 'node:path';

const { files } = JSON.parse(readFileSync('dist/bench.json', 'utf8'));
for (const file of files) {
  console.log(`\n${relative(process.cwd(), file.filepath)}`);
  for (const group of file.groups) {
    console.log(`  ${group.fullName.split(' > ').slice(1).join(' > ')}`);
    const quickest = Math.min(...group.benchmarks.map((b) => b.median));
    for (const b of group.benchmarks) {
      console.log(`    ${b.name.padEnd(52)} median ${b.median.toFixed(3).padStart(10)} ms   p99 ${b.p99.toFixed(3).padStart(10)} ms   × ${(b.median / quickest).toFixed(2)}`);
    }
  }
}
