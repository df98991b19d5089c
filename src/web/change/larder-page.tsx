import { useEffect, useState } from 'react';
import { Tab, TabList, TabPanel, Tabs } from 'react-aria-components';
import type { ChangeDesk } from '../../app/change-desk.ts';
import type { ChangeWords } from '../../app/change-report.ts';
import type { DeskOptions } from '../../app/desk.ts';
import { changeApi } from './change-api.ts';
import { MonthsPanel } from './months-panel.tsx';
import { PantryPanel } from './pantry-panel.tsx';
import { PricesPanel } from './prices-panel.tsx';
import { troubleText } from './use-asked.ts';
import './change.css';

/** Her prices, her pantry, the months of her region, and how they are told. */
export function LarderPage({ options }: { readonly options: DeskOptions }) {
  const [settings, setSettings] = useState<ChangeWords | null>(null);
  const [choices, setChoices] = useState<ChangeDesk['options'] | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    Promise.all([changeApi.settings(), changeApi.options()]).then(([kept, offered]) => { setSettings(kept); setChoices(offered); }).catch((error: unknown) => setTrouble(troubleText(error)));
  }, []);
  const keep = (change: Partial<ChangeWords>): void => {
    if (settings === null) return;
    const next = { ...settings, ...change };
    setSettings(next);
    if (next.currency.trim() !== '' && next.staleDays >= 1) changeApi.saveSettings(next).then(() => setTrouble(null)).catch((error: unknown) => setTrouble(troubleText(error)));
  };
  return (
    <div className="page larder">
      <h1>Prices and pantry</h1>
      {trouble !== null && <p className="trouble" role="alert">{trouble}</p>}
      <Tabs className="change-tabs">
        <TabList aria-label="Prices and pantry" className="change-tablist"><Tab id="prices" className="change-tab">Prices</Tab><Tab id="pantry" className="change-tab">Pantry</Tab><Tab id="months" className="change-tab">Months</Tab></TabList>
        <TabPanel id="prices">
          {settings !== null && (
            <div className="fields">
              <label className="field"><span>Currency</span><input value={settings.currency} onChange={(e) => keep({ currency: e.target.value })} /></label>
              <label className="field"><span>A price is old after, days</span><input inputMode="numeric" value={settings.staleDays} onChange={(e) => keep({ staleDays: Math.max(1, Math.round(Number(e.target.value)) || 1) })} /></label>
            </div>
          )}
          <PricesPanel key={`${settings?.currency ?? ''} ${settings?.staleDays ?? ''}`} options={options} />
        </TabPanel>
        <TabPanel id="pantry"><PantryPanel /></TabPanel>
        <TabPanel id="months">
          {settings !== null && choices !== null && choices.regions.length > 1 && <label className="field"><span>Region</span><select value={settings.region} onChange={(e) => keep({ region: e.target.value })}>{choices.regions.map((r) => <option key={r.region} value={r.region}>{r.name}</option>)}</select></label>}
          <MonthsPanel />
        </TabPanel>
      </Tabs>
    </div>
  );
}
