import type { CycleReport } from '../app/cycle-report.ts';
import { isoDate, type Day } from '../core/calendar/index.ts';
import type { DayForecast } from '../core/cycle/index.ts';

const forecastJson = (f: DayForecast): object => ({
  likely: isoDate(f.likely),
  from: isoDate(f.from),
  to: isoDate(f.to),
  chances: [...f.chances.mass].flatMap((chance, i) => (chance < 5e-4 ? [] : [{ day: isoDate((f.chances.first + i) as Day), chance: Math.round(chance * 1e4) / 1e4 }])),
});

/** A report as plain JSON: dates as YYYY-MM-DD, chances from 0 to 1, lengths in days. */
export function cycleJson(report: CycleReport): object {
  const { forecast } = report;
  return {
    today: isoDate(report.today),
    record: { starts: report.record.starts.map((s) => ({ day: isoDate(s.day), slackDays: s.slack })), person: { ageYears: report.record.person.age, states: report.record.person.states.map((s) => s.id) }, answers: report.record.answers },
    findings: report.findings,
    phases: report.phaseUse.use,
    cycles: report.history.cycles.map((c, i) => ({ start: isoDate(c.start), lengthDays: c.length, ovulationDay: c.ovulationDay, bleedDays: c.bleedDays, unrecordedChance: report.unrecorded[i] })),
    whyNoForecast: report.whyNoForecast,
    forecast: forecast && {
      basis: forecast.basis,
      cyclesUsed: forecast.cyclesUsed,
      lastStart: isoDate(forecast.lastStart),
      starts: forecast.starts.map(forecastJson),
      ovulation: forecastJson(forecast.ovulation),
      typicalLengthDays: forecast.typicalLength,
      ownSpreadDays: forecast.ownSpread,
      unrecordedChance: forecast.unrecordedChance,
      notFor: ['contraception', 'conception'],
    },
    days: report.phases.map((d, i) => ({ day: isoDate(d.day), chances: d.chances, scheme: report.schemeDays[i] && { verdict: report.schemeDays[i].verdict, said: report.schemeDays[i].said, all: report.schemeDays[i].all, fixed: report.schemeDays[i].fixed } })),
    scheme: { id: report.scheme.scheme.id, plain: report.scheme.plain, changes: report.scheme.changes },
    comparison: report.comparison,
    bounds: report.bounds.rules.map((r) => r.id),
    flags: report.flags,
    ratings: { answer: report.ratings.answer, cycles: report.ratings.cycles.map((c) => ({ ...c, start: isoDate(c.start) })) },
    curves: report.curves,
    menuChange: report.menuChange,
  };
}
