import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import type { CookAnswer } from '../../app/cook-dishes.ts';
import type { LiveView } from '../../app/live-cooking.ts';
import { cookApi } from './cook-api.ts';
import { LivePage } from './live-page.tsx';
import { OrderForm, orderOf, usualDraft, type DishChoice, type OrderDraft } from './order-form.tsx';
import { PlanView } from './plan-view.tsx';
import { clockMinute } from './use-live.ts';
import './cook.css';

const words = (error: unknown): string => (error instanceof Error ? error.message : String(error));

/** The cook plan: order, plan, running sheet, and live mode. `saved` are the dishes of the desk, if any. */
export function CookPage({ saved = [] }: { readonly saved?: readonly DishChoice[] }) {
  const [draft, setDraft] = useState<OrderDraft | null>(null);
  const [answer, setAnswer] = useState<CookAnswer | null>(null);
  const [live, setLive] = useState<{ first: LiveView | null } | null>(null);
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);

  useEffect(() => {
    let gone = false;
    cookApi.live(clockMinute(null)).then((on) => !gone && on && setLive({ first: on })).catch(() => undefined);
    cookApi.kitchen().then((usual) => !gone && setDraft((old) => old ?? usualDraft(usual.kitchen, usual.wordsPerMinute))).catch((error: unknown) => !gone && setTrouble(words(error)));
    return () => {
      gone = true;
    };
  }, []);

  const work = async (doing: () => Promise<void>): Promise<void> => {
    setBusy(true);
    setTrouble(null);
    try {
      await doing();
    } catch (error) {
      setTrouble(words(error));
    } finally {
      setBusy(false);
    }
  };
  const plan = (): void => void (draft && work(async () => setAnswer(await cookApi.plan(orderOf(draft, clockMinute(null))))));
  const begin = (): void =>
    void (draft && work(async () => {
      const begun = await cookApi.begin(orderOf(draft, clockMinute(null)));
      if ('live' in begun) setLive({ first: begun });
      else setAnswer(begun);
    }));

  if (live) return <div className="cook-page"><LivePage first={live.first} onLeave={() => setLive(null)} /></div>;
  return (
    <div className="cook-page">
      <h1>Cook plan</h1>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      {draft && <OrderForm draft={draft} onChange={setDraft} saved={saved} busy={busy} onPlan={plan} />}
      {answer && <PlanView answer={answer} />}
      {answer?.kind === 'plan' && (
        <p className="cook-row cook-go">
          <Button onPress={begin} isDisabled={busy}>Cook it now, step by step</Button>
          <Button className="plain" onPress={() => window.print()}>Print the running sheet</Button>
        </p>
      )}
    </div>
  );
}
