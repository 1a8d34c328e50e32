const plain = (text: string) => ({ type: 'plain_text', text });
const marked = (text: string) => ({ type: 'mrkdwn', text });
const options = ['one', 'two', 'three'].map((value) => ({ text: plain(`Option ${value}`), value }));
const series = (name: string, ...values: number[]) => ({
  name,
  data: values.map((value, index) => ({ label: ['Squat', 'Hinge', 'Push'][index] ?? '', value })),
});
const axis = { categories: ['Squat', 'Hinge', 'Push'], x_label: 'pattern', y_label: 'sets' };

/** One message with each kind of block and element that the workspace takes. */
export const everyKind = [
  { type: 'header', text: plain('Every kind') },
  { type: 'section', text: marked('*Bold*, _italic_, `code`'), fields: [marked('a'), plain('b')] },
  {
    type: 'section',
    text: plain('With a picture'),
    accessory: { type: 'image', image_url: 'https://a.example/a.png', alt_text: 'A picture from elsewhere' },
  },
  {
    type: 'context',
    elements: [marked('small'), { type: 'image', image_url: 'https://a.example/a.png', alt_text: 'b' }],
  },
  { type: 'divider' },
  {
    type: 'actions',
    elements: [
      { type: 'button', text: plain('Press'), action_id: 'press', value: 'pressed', style: 'primary' },
      { type: 'static_select', action_id: 'select', placeholder: plain('Choose one'), options },
      { type: 'multi_static_select', action_id: 'multi', placeholder: plain('Choose some'), options },
      { type: 'users_select', action_id: 'users', placeholder: plain('Choose a person') },
      { type: 'multi_users_select', action_id: 'people', initial_users: ['U0MIRA'] },
      { type: 'conversations_select', action_id: 'place', filter: { include: ['public', 'private'] } },
      { type: 'overflow', action_id: 'overflow', options },
      { type: 'radio_buttons', action_id: 'radio', options },
      { type: 'checkboxes', action_id: 'checks', options },
      { type: 'datepicker', action_id: 'date', placeholder: plain('A day') },
      { type: 'timepicker', action_id: 'time', placeholder: plain('A time') },
    ],
  },
  {
    type: 'input',
    label: plain('A text'),
    hint: plain('A hint'),
    element: { type: 'plain_text_input', action_id: 'text' },
  },
  {
    type: 'input',
    label: plain('A number'),
    element: { type: 'number_input', action_id: 'number', is_decimal_allowed: false },
  },
  { type: 'image', title: plain('A title'), image_url: 'https://a.example/a.png', alt_text: 'Told in words' },
  {
    type: 'rich_text',
    elements: [
      { type: 'rich_text_section', elements: [{ type: 'text', text: 'Rich', style: { bold: true } }] },
      {
        type: 'rich_text_list',
        style: 'bullet',
        elements: [{ type: 'rich_text_section', elements: [{ type: 'text', text: 'An item' }] }],
      },
    ],
  },
  {
    type: 'table',
    rows: [
      [
        { type: 'raw_text', text: 'Muscle' },
        { type: 'raw_text', text: 'Sets' },
      ],
      [
        { type: 'raw_text', text: 'Chest' },
        { type: 'raw_number', value: 8.5, text: '8.5' },
      ],
    ],
  },
  {
    type: 'data_visualization',
    title: 'A chart of bars',
    chart: { type: 'bar', series: [series('This week', 3, 5, 7)], axis_config: axis },
  },
  {
    type: 'data_visualization',
    title: 'A chart of lines',
    chart: {
      type: 'line',
      series: [series('This week', 3, 5, 7), series('Last week', 2, 6, 4)],
      axis_config: axis,
    },
  },
];
