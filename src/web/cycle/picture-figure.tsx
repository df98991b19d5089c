import type { CyclePicture } from '../../app/cycle-answer.ts';

/** A picture made by the server, its caption, and the same as a table. */
export function PictureFigure({ picture }: { readonly picture: CyclePicture }) {
  const { table } = picture;
  return (
    <figure className="cycle-figure">
      <figcaption>{picture.caption}</figcaption>
      {/* The server escapes every word of hers (src/adapters/print/svg.ts). */}
      <div className="cycle-svg" tabIndex={0} role="region" aria-label={table.caption} dangerouslySetInnerHTML={{ __html: picture.svg }} />
      <details>
        <summary>The same as a table</summary>
        <table>
          <caption>{table.caption}</caption>
          <thead><tr>{table.head.map((cell) => <th key={cell} scope="col">{cell}</th>)}</tr></thead>
          <tbody>{table.rows.map((row) => <tr key={row[0]}>{row.map((cell, i) => <td key={table.head[i] ?? i}>{cell}</td>)}</tr>)}</tbody>
        </table>
      </details>
    </figure>
  );
}
