import { useId } from 'preact/hooks';
import type { AcceptedChart } from '../accepted-blocks.ts';

type Chart = AcceptedChart['chart'];
type SeriesChart = Extract<Chart, { readonly type: 'bar' | 'line' | 'area' }>;

const number = new Intl.NumberFormat('en', { maximumFractionDigits: 2 });

const valueAt = (series: SeriesChart['series'][number], label: string): number =>
  series.data.find((point) => point.label === label)?.value ?? 0;

const mostOf = (chart: SeriesChart): number =>
  Math.max(1e-9, ...chart.series.flatMap(({ data }) => data.map(({ value }) => value)));

const Legend = ({ names }: { readonly names: readonly string[] }) =>
  names.length < 2 ? null : (
    <ul class="legend">
      {names.map((name, index) => (
        <li key={name}>
          <svg class={`mark tone-${index}`} viewBox="0 0 10 10" aria-hidden="true">
            <rect width="10" height="10" rx="2" />
          </svg>
          {name}
        </li>
      ))}
    </ul>
  );

/** Lying bars, so that each label and number has its room on a phone. */
const Bars = ({ chart }: { readonly chart: SeriesChart }) => {
  const most = mostOf(chart);
  return (
    <table class="bars">
      <tbody>
        {chart.axis_config.categories.map((category) => (
          <tr key={category}>
            <th scope="row">{category}</th>
            <td>
              {chart.series.map((series, index) => {
                const value = valueAt(series, category);
                return (
                  <div class="bar" key={series.name}>
                    <svg
                      class={`tone-${index}`}
                      viewBox="0 0 100 10"
                      preserveAspectRatio="none"
                      aria-hidden="true"
                    >
                      <rect class="track" width="100" height="10" />
                      <rect width={Math.max(0, (value / most) * 100)} height="10" />
                    </svg>
                    <span class="number">
                      {chart.series.length > 1 && <span class="spoken">{series.name}: </span>}
                      {number.format(value)}
                    </span>
                  </div>
                );
              })}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
};

const Lines = ({ chart }: { readonly chart: SeriesChart }) => {
  const most = mostOf(chart);
  const { categories } = chart.axis_config;
  const at = (index: number, value: number): string =>
    `${categories.length < 2 ? 150 : (index / (categories.length - 1)) * 296 + 2},${98 - (value / most) * 92}`;
  return (
    <>
      <svg class="lines" viewBox="0 0 300 100" aria-hidden="true">
        <path class="axis" d="M0 98H300" />
        {chart.series.map((series, index) => {
          const points = categories.map((category, place) => at(place, valueAt(series, category)));
          return chart.type === 'area' ? (
            <polygon class={`tone-${index}`} key={series.name} points={`2,98 ${points.join(' ')} 298,98`} />
          ) : (
            <polyline class={`tone-${index}`} key={series.name} points={points.join(' ')} />
          );
        })}
      </svg>
      <div class="table-scroll">
        <table class="grid">
          <thead>
            <tr>
              <th scope="col">{chart.axis_config.x_label ?? ''}</th>
              {chart.series.map(({ name }) => (
                <th scope="col" class="right" key={name}>
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {categories.map((category) => (
              <tr key={category}>
                <th scope="row">{category}</th>
                {chart.series.map((series) => (
                  <td class="right" key={series.name}>
                    {number.format(valueAt(series, category))}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
};

const Shares = ({ chart }: { readonly chart: Extract<Chart, { readonly type: 'pie' }> }) => {
  const total = chart.segments.reduce((sum, { value }) => sum + value, 0);
  return (
    <Bars
      chart={{
        type: 'bar',
        series: [
          {
            name: 'Share in %',
            data: chart.segments.map(({ label, value }) => ({
              label,
              value: Math.round((value / total) * 100),
            })),
          },
        ],
        axis_config: { categories: chart.segments.map(({ label }) => label) },
      }}
    />
  );
};

/** A native chart: drawn, with each of its numbers as text. */
export const ShowChart = ({ block }: { readonly block: AcceptedChart }) => {
  const { chart } = block;
  const titleId = useId();
  return (
    <figure class="chart" aria-labelledby={titleId}>
      <figcaption id={titleId}>
        {block.title}
        {chart.type !== 'pie' && chart.axis_config.y_label !== undefined && (
          <span class="unit">{chart.axis_config.y_label}</span>
        )}
      </figcaption>
      {chart.type !== 'pie' && <Legend names={chart.series.map(({ name }) => name)} />}
      {chart.type === 'pie' ? (
        <Shares chart={chart} />
      ) : chart.type === 'bar' ? (
        <Bars chart={chart} />
      ) : (
        <Lines chart={chart} />
      )}
    </figure>
  );
};
