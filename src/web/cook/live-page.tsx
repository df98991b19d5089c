import { useEffect } from 'react';
import { Button } from 'react-aria-components';
import type { LiveView } from '../../app/live-cooking.ts';
import { looksOf, type PlannedStep, type Tap } from '../../core/cooking/index.ts';
import { attentionText, clock, countdown, leftOutText, noteText, placeText } from '../../messages/cooking.ts';
import { useLive } from './use-live.ts';

interface StepProps {
  readonly step: PlannedStep;
  readonly dish: string;
  readonly minute: number;
  readonly look: number | null;
  readonly tap: (tap: Tap) => void;
}

function RunningStep({ step, dish, minute, look, tap }: StepProps) {
  const left = (step.end - minute) * 60;
  const over = left < 0;
  const { id, title } = step.step;
  return (
    <li className="cook-step" data-over={over || undefined} data-kind={step.step.attention.kind}>
      <div className="cook-step-words">
        <h3>{title}</h3>
        <p className="cook-quiet">{[dish, placeText(step), attentionText(step)].filter((part) => part !== '').join(' · ')}</p>
        {look !== null && <p className="cook-look">Look at {clock(look)}</p>}
      </div>
      <p className="cook-left"><span>{over ? 'over by' : 'left'}</span> <strong>{countdown(Math.abs(left))}</strong></p>
      <div className="cook-taps">
        <Button onPress={() => tap({ kind: 'done', step: id })} aria-label={`Done: ${title}`}>Done</Button>
        <Button className="plain" onPress={() => tap({ kind: 'more', step: id, minutes: 3 })} aria-label={`Needs 3 more min: ${title}`}>Needs 3 more min</Button>
      </div>
    </li>
  );
}

function Say({ view, minute }: { readonly view: LiveView; readonly minute: number }) {
  if (!view.talk) return null;
  const second = minute * 60;
  const now = view.talk.spoken.find((line) => line.start <= second && second < line.end);
  const next = view.talk.spoken.find((line) => line.start > second);
  const line = now ?? next;
  return (
    <section className="cook-say" aria-labelledby="cook-say">
      <h2 id="cook-say">{now ? 'Say now' : 'Say next'}</h2>
      {line ? (
        <>
          <p className="cook-quiet">{now ? `${countdown(now.end - second)} left to say it` : `at ${clock(Math.floor(line.start / 60))}, in ${countdown(line.start - second)}`}</p>
          <p className="cook-line">{line.paragraph.text}</p>
        </>
      ) : <p className="cook-quiet">Nothing more to say.</p>}
      {view.talk.leftOut.length > 0 && (
        <details>
          <summary>Lines without a place: {view.talk.leftOut.length}</summary>
          <ul>{view.talk.leftOut.map((out) => <li key={out.paragraph.number}>{leftOutText(out)}</li>)}</ul>
        </details>
      )}
    </section>
  );
}

/** Keeps the screen on where the device can. */
function useScreenOn(): void {
  useEffect(() => {
    let lock: { release: () => Promise<void> } | null = null;
    const wake = (navigator as { wakeLock?: { request: (kind: 'screen') => Promise<{ release: () => Promise<void> }> } }).wakeLock;
    wake?.request('screen').then((held) => (lock = held)).catch(() => undefined);
    return () => void lock?.release().catch(() => undefined);
  }, []);
}

function Evening({ view, minute, tap, end }: { readonly view: LiveView; readonly minute: number; readonly tap: (tap: Tap) => void; readonly end: () => void }) {
  const { live, dishNames } = view;
  const { plan, steps } = live;
  useScreenOn();
  const running = plan.steps.filter((entry) => steps[entry.step.id] && steps[entry.step.id]!.doneAt === null);
  const coming = plan.steps.filter((entry) => !steps[entry.step.id]);
  const done = plan.steps.filter((entry) => steps[entry.step.id]?.doneAt != null);
  const active = running.filter(({ step }) => step.attention.kind === 'hands' || step.attention.kind === 'stir');
  const alone = running.filter((entry) => !active.includes(entry));
  const looks = looksOf(plan.steps, live.request.kitchen.cooks);
  const lookOf = (entry: PlannedStep): number | null => looks.find((look) => look.step === entry.step.id && look.minute >= Math.floor(minute))?.minute ?? null;
  const titleOf = (id: string): string => plan.steps.find((entry) => entry.step.id === id)?.step.title ?? id;
  const serving = plan.servings.find((one) => one.minute >= minute) ?? plan.servings.at(-1)!;
  const oven = plan.oven.find((change) => change.minute >= Math.floor(minute) - 1);
  const row = (entry: PlannedStep) => <RunningStep key={entry.step.id} step={entry} dish={dishNames[entry.dish] ?? ''} minute={minute} look={lookOf(entry)} tap={tap} />;
  const last = live.notes.filter((note) => note.kind === 'moved').at(-1);
  const notes = live.notes.filter((note) => note.minute >= minute - 10 && (note.kind !== 'moved' || note === last)).slice(-2);
  return (
    <div className="cook-live">
      <h1 className="sr-only">Cooking now</h1>
      <header className="cook-clock">
        <p><span className="cook-quiet">Now</span><strong>{clock(Math.floor(minute))}</strong></p>
        <p><span className="cook-quiet">On the table</span><strong>{clock(serving.minute)}</strong></p>
        <p><span className="cook-quiet">To go</span><strong>{minute > serving.minute ? `+${countdown((minute - serving.minute) * 60)}` : countdown((serving.minute - minute) * 60)}</strong></p>
      </header>
      <div role="status" className="cook-notes">{notes.map((note, i) => <p key={i}>{noteText(note, titleOf)}</p>)}</div>
      {view.finished && <p className="cook-finished">Everything is done. Call them to the table.</p>}
      <section aria-labelledby="cook-now">
        <h2 id="cook-now">In your hands</h2>
        {active.length > 0 ? <ul className="cook-steps">{active.map(row)}</ul> : <p className="cook-quiet cook-free">{coming[0] ? `Your hands are free. Next: ${coming[0].step.title}, ${coming[0].start > minute ? `in ${countdown((coming[0].start - minute) * 60)}` : 'as soon as the step before it is done'}.` : 'Your hands are free.'}</p>}
      </section>
      <Say view={view} minute={minute} />
      {alone.length > 0 && (
        <section aria-labelledby="cook-alone">
          <h2 id="cook-alone">Running by itself</h2>
          <ul className="cook-steps">{alone.map(row)}</ul>
        </section>
      )}
      {coming.length > 0 && (
        <section aria-labelledby="cook-next">
          <h2 id="cook-next">Next</h2>
          <ol className="cook-coming">
            {oven && oven.minute > minute && <li><strong>{clock(oven.minute)}</strong> <span>Set the oven to {oven.celsius} °C</span></li>}
            {coming.map((entry) => (
              <li key={entry.step.id}>
                <strong>{clock(entry.start)}</strong> <span>{entry.step.title}</span>
                <Button className="plain" onPress={() => tap({ kind: 'start', step: entry.step.id })} aria-label={`Start now: ${entry.step.title}`}>Start now</Button>
              </li>
            ))}
          </ol>
        </section>
      )}
      {done.length > 0 && (
        <details className="cook-done">
          <summary>Done: {done.length} of {plan.steps.length}</summary>
          <ul className="cook-coming">
            {done.map((entry) => (
              <li key={entry.step.id}>
                <strong>✓ {clock(steps[entry.step.id]!.doneAt!)}</strong> <span>{entry.step.title}</span>
                <Button className="plain" onPress={() => tap({ kind: 'not-done', step: entry.step.id })} aria-label={`Not done after all: ${entry.step.title}`}>Not done after all</Button>
              </li>
            ))}
          </ul>
        </details>
      )}
      <p className="cook-end"><Button className="plain" onPress={end}>{view.finished ? 'Close this cooking' : 'Stop this cooking'}</Button></p>
    </div>
  );
}

/** Live mode: the evening that is on, in large type. `first` when it has just begun. */
export function LivePage({ first, onLeave }: { readonly first: LiveView | null; readonly onLeave: () => void }) {
  const { view, known, minute, trouble, tap, end } = useLive(first);
  return (
    <>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      {view !== null && <Evening view={view} minute={minute} tap={tap} end={end} />}
      {known && view === null && (
        <div className="cook-none">
          <p>No cooking is on at the moment.</p>
          <Button onPress={onLeave}>Make a plan</Button>
        </div>
      )}
    </>
  );
}
