import type { CookAnswer, CookedPlan } from '../app/cook-dishes.ts';
import { aheadText, attentionText, chanceText, clashTexts, clock, deadAirText, deedText, leftOutText, lineTroubleText, minutesText, placeText, qualityText, clockSeconds } from '../messages/cooking.ts';
import { columns, pad, paint, wrap, type Screen } from './screen.ts';

const indent = (lines: readonly string[], by: number): string[] => lines.map((line) => ' '.repeat(by) + line);

function rows(answer: CookedPlan, screen: Screen): string[] {
  const { sheet, dishNames, request } = answer;
  const speaks = answer.talk !== null;
  const doWidth = speaks ? Math.floor((screen.width - 16) / 2) : screen.width - 16;
  const sayWidth = screen.width - 18 - doWidth;
  return sheet.flatMap((row) => {
    const does = row.deeds.flatMap((deed) => wrap(deedText(deed, dishNames, request.kitchen.cooks), doWidth - 2).map((line, i) => (i === 0 ? line : `  ${line}`)));
    const says = row.says.flatMap((say) => wrap(`${clockSeconds(say.start).split(':').slice(1).join(':')} ${say.text}`, sayWidth));
    const height = Math.max(does.length, says.length);
    return Array.from({ length: height }, (_, i) => {
      const time = i === 0 ? `${pad(clock(row.minute).replace(' the day before', '−1d'), 7)} ${pad(`−${row.toServing}`, 6, 'right')}  ` : ' '.repeat(16);
      const left = does[i] ?? '';
      const text = speaks ? `${time}${pad(left, doWidth)}  ${says[i] ?? ''}` : `${time}${left}`;
      return text.trimEnd();
    });
  });
}

/** The plan as a terminal page. */
export function cookView(answer: CookAnswer, screen: Screen): string {
  const out: string[] = [];
  const heading = (text: string): void => void out.push('', paint(text, 'bold', screen));
  const list = (lines: readonly string[]): void => {
    for (const line of lines) out.push(...wrap(line, screen.width - 4).map((part, i) => `  ${i === 0 ? '· ' : '  '}${part}`));
  };
  if (answer.troubles.length > 0) {
    heading('Please look at these lines');
    list(answer.troubles.map(lineTroubleText));
  }
  if (answer.kind === 'no-plan-found') {
    heading('No plan was found in the time');
    list(['The dishes may still fit: take one out, or give the search more time with --seconds.']);
    return `${out.join('\n')}\n`;
  }
  if (answer.kind === 'clash') {
    const { why, remedies } = clashTexts(answer.clash, answer);
    heading('These wishes cannot all be kept together');
    list(why);
    heading('Any one of these changes makes a plan possible');
    list(remedies.length > 0 ? remedies : ['No single change was found; change two of the above.']);
    if (answer.earliest !== null) list([`as things are, everything can be on the table at ${clock(answer.earliest)}`]);
    if (!answer.clash.sure) list(['The search ended early: the list may hold more than it must.']);
    return `${out.join('\n')}\n`;
  }
  const { plan } = answer;
  heading(`Begin at ${clock(plan.begin)}, on the table at ${plan.servings.map((serving) => clock(serving.minute)).join(' and ')}`);
  out.push(...wrap(qualityText(plan), screen.width), ...wrap(chanceText(answer.chances), screen.width));
  if (plan.ahead.length > 0) {
    heading('Hours before');
    list(plan.ahead.map(aheadText));
  }
  heading(answer.talk ? 'Clock   to go   Do / Say' : 'Clock   to go   Do');
  out.push(...rows(answer, screen));
  heading('Step by step');
  for (const step of plan.steps) {
    const wait = step.waits > 0 ? `then waits ${minutesText(step.waits)}${step.mayWait === null ? '' : ` of ${minutesText(step.mayWait)} at most`}` : step.mayWait === null ? '' : `may wait ${minutesText(step.mayWait)}`;
    const slack = step.slack > 0 ? `may begin ${minutesText(step.slack)} late` : 'must begin on time';
    const head = `${pad(clock(step.start), 6)} ${pad(clock(step.end), 6)} ${step.step.title}`;
    const tail = [answer.dishNames[step.dish], placeText(step), attentionText(step), slack, wait].filter((part) => part).join(' · ');
    out.push(...(columns(head) > screen.width ? wrap(head, screen.width) : [head]), ...indent(wrap(tail, screen.width - 14), 14).map((line) => paint(line, 'dim', screen)));
  }
  if (answer.talk && answer.talk.leftOut.length > 0) {
    heading('Lines that do not fit');
    list(answer.talk.leftOut.map(leftOutText));
  }
  if (answer.talk && answer.talk.deadAir.length > 0) {
    heading('Silences');
    list(answer.talk.deadAir.map(deadAirText));
  }
  return `${out.join('\n')}\n`;
}
