import type { SheetRow } from '../../core/cooking/index.ts';
import { clock, clockSeconds, deedText } from '../../messages/cooking.ts';

/** The running sheet: clock and countdown, what to do, what to say. */
export function SheetTable({ sheet, dishNames, cooks, speaks }: { readonly sheet: readonly SheetRow[]; readonly dishNames: Readonly<Record<string, string>>; readonly cooks: number; readonly speaks: boolean }) {
  return (
    <table className="cook-sheet">
      <caption className="sr-only">Running sheet</caption>
      <thead>
        <tr><th scope="col">Clock</th><th scope="col">To go</th><th scope="col">Do</th>{speaks && <th scope="col">Say</th>}</tr>
      </thead>
      <tbody>
        {sheet.map((row) => (
          <tr key={row.minute}>
            <th scope="row">{clock(row.minute)}</th>
            <td className="cook-togo">{row.toServing === 0 ? 'now' : `−${row.toServing} min`}</td>
            <td><ul>{row.deeds.map((deed, i) => <li key={i} data-deed={deed.kind}>{deedText(deed, dishNames, cooks)}</li>)}</ul></td>
            {speaks && <td>{row.says.map((say) => <p key={say.paragraph}><span className="cook-quiet">{clockSeconds(say.start).slice(-5)}</span> {say.text}</p>)}</td>}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
