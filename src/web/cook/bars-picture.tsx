import { resourceBars, type BarRow, type CookPlan, type TalkTrack } from '../../core/cooking/index.ts';
import { clock } from '../../messages/cooking.ts';

const rowHeight = 30;
const left = 84;
const width = 1000;

function rowName(row: BarRow): string {
  switch (row.resource) {
    case 'cook': return `Cook ${row.number}`;
    case 'ring': return `Ring ${row.number}`;
    case 'oven': return row.number === 1 ? 'Oven' : '';
    case 'waiting': return row.number === 1 ? 'By itself' : '';
    case 'talk': return 'Talk';
  }
}

/** Letters for dishes, so that bars can be told apart without colour. */
const letter = (index: number): string => String.fromCharCode(65 + index);

/** Cooks, rings, oven and talk over time. The running sheet beside it says the same in words. */
export function BarsPicture({ plan, talk, dishNames }: { readonly plan: CookPlan; readonly talk: TalkTrack | null; readonly dishNames: Readonly<Record<string, string>> }) {
  const rows = resourceBars(plan, talk);
  const begin = Math.min(plan.begin, ...plan.oven.map((change) => change.minute));
  const span = Math.max(1, plan.end - begin);
  const x = (minute: number): number => left + ((minute - begin) / span) * (width - left - 8);
  const height = rows.length * rowHeight + 40;
  const step = span > 240 ? 60 : span > 100 ? 30 : span > 45 ? 15 : 5;
  const ticks = Array.from({ length: Math.floor(plan.end / step) - Math.ceil(begin / step) + 1 }, (_, i) => (Math.ceil(begin / step) + i) * step);
  const dishes = Object.keys(dishNames);
  return (
    <figure className="cook-bars">
      <div className="cook-bars-scroll">
        <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label="Who and what is busy when; the running sheet says the same in words">
          <defs>
            <pattern id="cook-stay" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><rect width="6" height="6" fill="#114b55" /><line x1="0" y1="0" x2="0" y2="6" stroke="#7fb0b3" strokeWidth="2" /></pattern>
            <pattern id="cook-alone" width="7" height="7" patternUnits="userSpaceOnUse"><rect width="7" height="7" fill="#e9f1f0" /><circle cx="2" cy="2" r="1.1" fill="#5d8085" /></pattern>
            <pattern id="cook-heating" width="7" height="7" patternUnits="userSpaceOnUse"><rect width="7" height="7" fill="#f8e7de" /><path d="M0 7 L7 0" stroke="#a9491f" strokeWidth="1" /></pattern>
          </defs>
          {ticks.map((tick) => (
            <g key={tick}>
              <line x1={x(tick)} x2={x(tick)} y1="20" y2={height - 14} stroke="#c9d5d2" strokeWidth="1" />
              <text x={x(tick)} y="14" textAnchor={x(tick) > width - 30 ? 'end' : 'middle'} fontSize="12" fill="#55635f">{clock(tick)}</text>
            </g>
          ))}
          {rows.map((row, r) => (
            <g key={row.id} transform={`translate(0 ${24 + r * rowHeight})`}>
              <text x="0" y="18" fontSize="13" fill="#15211f">{rowName(row)}</text>
              {row.bars.map((bar, i) => {
                const from = x(bar.start);
                const wide = Math.max(2, x(bar.end) - from);
                const dark = bar.kind === 'hands' || bar.kind === 'stay';
                const fill = bar.kind === 'hands' ? '#114b55' : bar.kind === 'talk' ? '#fdf1d6' : `url(#cook-${bar.kind})`;
                const mark = bar.dish === null ? '' : letter(dishes.indexOf(bar.dish));
                const room = Math.floor(wide / 6.6);
                const label = bar.kind === 'talk' ? '' : mark === '' ? bar.title : room > 5 ? `${mark} ${bar.title}` : mark;
                return (
                  <g key={i}>
                    <title>{`${clock(Math.floor(bar.start))} to ${clock(Math.ceil(bar.end))}: ${bar.title}`}</title>
                    <rect x={from} y="2" width={wide} height={rowHeight - 6} rx="3" fill={fill} stroke={bar.kind === 'talk' ? '#8a5a00' : '#114b55'} strokeWidth="1" />
                    {!dark && label !== '' && room >= 2 && <rect x={from + 2} y="6" width={Math.min(wide - 4, label.length * 6.6 + 4)} height="16" fill="#ffffff" opacity="0.88" />}
                    {room >= 2 && <text x={from + 4} y="18" fontSize="11.5" fill={dark ? '#ffffff' : '#15211f'} stroke={bar.kind === 'stay' ? '#114b55' : 'none'} strokeWidth={bar.kind === 'stay' ? 3 : 0} paintOrder="stroke">{label.length > room ? `${label.slice(0, Math.max(1, room - 1))}…` : label}</text>}
                  </g>
                );
              })}
            </g>
          ))}
        </svg>
      </div>
      <figcaption className="cook-quiet">
        {dishes.map((dish, i) => `${letter(i)} ${dishNames[dish]}`).join(' · ')}. Solid: hands. Stripes: stay with it. Dots: runs by itself. Slant: oven warming up.
      </figcaption>
    </figure>
  );
}
