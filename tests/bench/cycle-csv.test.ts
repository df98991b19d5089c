import { describe, expect, it } from 'vitest';
import { readWomenCsv } from '../../bench/cycle-csv.ts';

describe('a file of real cycles for the bench', () => {
  it('is read by its columns, whatever their exact names', () => {
    for (const header of ['woman,cycle number,length,ovulation day', 'ClientID,CycleNumber,LengthofCycle,EstimatedDayofOvulation', 'woman;cycle number;length;ovulation day']) {
      const sep = header.includes(';') ? ';' : ',';
      const women = readWomenCsv([header, ['a', 1, 28, 14].join(sep), ['a', 2, 30, ''].join(sep), ['b', 1, 26, 12].join(sep)].join('\n'));
      expect(women.map((w) => [w.id, w.lengths, w.ovulations])).toEqual([['a', [28, 30], [14, null]], ['b', [26], [12]]]);
    }
  });
  it('joins no history over a missing cycle or an empty length', () => {
    expect(readWomenCsv('woman,cycle number,length\na,1,28\na,3,30').map((w) => w.lengths)).toEqual([[28], [30]]);
    expect(readWomenCsv('woman,cycle number,length\na,1,28\na,2,\na,3,30').map((w) => w.lengths)).toEqual([[28], [30]]);
  });
  it('says which columns it needs', () => {
    expect(() => readWomenCsv('x,y\n1,2')).toThrow(/woman, cycle number, length/);
  });
});
