import { useContext, useId, useState } from 'preact/hooks';
import type { AcceptedConfirm, AcceptedElement, AcceptedOption } from '../accepted-elements.ts';
import { type FieldValue, initialValueOf } from '../form-values.ts';
import { Dialog } from './dialog.tsx';
import type { Form } from './form.ts';
import { Menu } from './menu.tsx';
import { readEntities } from './read-mrkdwn.ts';
import { ReaderContext } from './reader.ts';
import { ShowImage } from './show-image.tsx';
import { ShowText } from './show-text.tsx';

type Labels = {
  /** The id of the visible label, where there is one. */
  readonly labelledBy?: string;
  readonly describedBy?: string;
  /** Said where no label is visible. */
  readonly spoken: string;
};

type Props<T extends AcceptedElement> = {
  readonly element: T;
  readonly blockId: string;
  readonly form: Form;
  readonly labels: Labels;
  /** An input waits for the form to be sent; elsewhere a change tells the app at once. */
  readonly actsAtOnce: boolean;
};
type Of<K extends AcceptedElement['type']> = Extract<AcceptedElement, { readonly type: K }>;

const ariaOf = ({ labelledBy, describedBy, spoken }: Labels) => ({
  ...(labelledBy === undefined ? { 'aria-label': spoken } : { 'aria-labelledby': labelledBy }),
  ...(describedBy === undefined ? {} : { 'aria-describedby': describedBy }),
});

const valueIn = <T extends Exclude<AcceptedElement, { type: 'image' }>>({
  element,
  blockId,
  form,
}: Props<T>) => form.values[blockId]?.[element.action_id] ?? initialValueOf(element) ?? '';
const textIn = <T extends Exclude<AcceptedElement, { type: 'image' }>>(props: Props<T>): string => {
  const value = valueIn(props);
  return typeof value === 'string' ? value : '';
};
const listIn = <T extends Exclude<AcceptedElement, { type: 'image' }>>(
  props: Props<T>,
): readonly string[] => {
  const value = valueIn(props);
  return typeof value === 'string' ? [] : value;
};
const fill = <T extends Exclude<AcceptedElement, { type: 'image' }>>(props: Props<T>, value: FieldValue) => {
  props.form.change(props.blockId, props.element.action_id, value);
  if (props.actsAtOnce) props.form.act(props.blockId, props.element.action_id, value);
};

const ConfirmDialog = (props: {
  readonly confirm: AcceptedConfirm;
  readonly agree: () => void;
  readonly close: () => void;
}) => (
  <Dialog title={props.confirm.title.text} close={props.close} isNarrow>
    <div class="dialog-body">
      <ShowText text={props.confirm.text} />
    </div>
    <footer class="dialog-foot">
      <button type="button" class="button" onClick={props.close}>
        {props.confirm.deny.text}
      </button>
      <button
        type="button"
        class={props.confirm.style === 'danger' ? 'button danger' : 'button primary'}
        onClick={() => {
          props.close();
          props.agree();
        }}
      >
        {props.confirm.confirm.text}
      </button>
    </footer>
  </Dialog>
);

const ButtonElement = ({ element, blockId, form }: Props<Of<'button'>>) => {
  const [isAsking, setAsking] = useState(false);
  const press = () => {
    if (element.url !== undefined) window.open(element.url, '_blank', 'noopener');
    form.act(blockId, element.action_id);
  };
  return (
    <>
      <button
        type="button"
        class={`button ${element.style ?? ''}`}
        disabled={form.isBusy}
        {...(element.accessibility_label === undefined ? {} : { 'aria-label': element.accessibility_label })}
        onClick={() => (element.confirm === undefined ? press() : setAsking(true))}
      >
        {readEntities(element.text.text)}
      </button>
      {isAsking && element.confirm !== undefined && (
        <ConfirmDialog confirm={element.confirm} agree={press} close={() => setAsking(false)} />
      )}
    </>
  );
};

const OverflowElement = ({ element, blockId, form, labels }: Props<Of<'overflow'>>) => {
  const [asked, setAsked] = useState<string | undefined>(undefined);
  const choose = (value: string) => form.act(blockId, element.action_id, value);
  return (
    <>
      <Menu
        label={`More: ${labels.spoken}`}
        items={element.options.map((option) => ({
          label: readEntities(option.text.text),
          choose: () => (element.confirm === undefined ? choose(option.value) : setAsked(option.value)),
        }))}
      />
      {asked !== undefined && element.confirm !== undefined && (
        <ConfirmDialog
          confirm={element.confirm}
          agree={() => choose(asked)}
          close={() => setAsked(undefined)}
        />
      )}
    </>
  );
};

const Options = ({ options }: { readonly options: readonly AcceptedOption[] }) => (
  <>
    {options.map((option) => (
      <option key={option.value} value={option.value}>
        {readEntities(option.text.text)}
      </option>
    ))}
  </>
);

const SelectElement = (props: Props<Of<'static_select'>>) => {
  const { element, labels } = props;
  return (
    <select
      {...ariaOf(labels)}
      disabled={props.form.isBusy}
      value={textIn(props)}
      onChange={(event) => fill(props, event.currentTarget.value)}
    >
      <option value="" disabled={props.actsAtOnce}>
        {element.placeholder?.text ?? 'Choose'}
      </option>
      {element.options !== undefined && <Options options={element.options} />}
      {element.option_groups?.map((group) => (
        <optgroup key={group.label.text} label={group.label.text}>
          <Options options={group.options} />
        </optgroup>
      ))}
    </select>
  );
};

type Named = { readonly id: string; readonly name: string };

const NamedSelect = ({
  props,
  named,
  none,
}: {
  readonly props: Props<Of<'users_select'> | Of<'conversations_select'>>;
  readonly named: readonly Named[];
  readonly none: string;
}) => {
  return (
    <select
      {...ariaOf(props.labels)}
      disabled={props.form.isBusy}
      value={textIn(props)}
      onChange={(event) => fill(props, event.currentTarget.value)}
    >
      <option value="">{props.element.placeholder?.text ?? none}</option>
      {named.map(({ id, name }) => (
        <option key={id} value={id}>
          {name}
        </option>
      ))}
    </select>
  );
};

const UsersSelectElement = (props: Props<Of<'users_select'>>) => (
  <NamedSelect props={props} named={useContext(ReaderContext).people} none="Choose a person" />
);

const ChannelSelectElement = (props: Props<Of<'conversations_select'>>) => (
  <NamedSelect props={props} named={useContext(ReaderContext).channels} none="Choose a channel" />
);

const Choice = (props: {
  readonly kind: 'radio' | 'checkbox';
  readonly group: string;
  readonly option: AcceptedOption;
  readonly isChosen: boolean;
  readonly isDisabled: boolean;
  readonly choose: (isOn: boolean) => void;
}) => (
  <label class="choice">
    <input
      type={props.kind}
      name={props.group}
      checked={props.isChosen}
      disabled={props.isDisabled}
      onChange={(event) => props.choose(event.currentTarget.checked)}
    />
    <span>
      <ShowText text={props.option.text} />
      {props.option.description !== undefined && (
        <span class="choice-more">
          <ShowText text={props.option.description} />
        </span>
      )}
    </span>
  </label>
);

const RadioElement = (props: Props<Of<'radio_buttons'>>) => {
  const group = useId();
  return (
    <div role="radiogroup" class="choices" {...ariaOf(props.labels)}>
      {props.element.options.map((option) => (
        <Choice
          key={option.value}
          kind="radio"
          group={group}
          option={option}
          isChosen={textIn(props) === option.value}
          isDisabled={props.form.isBusy}
          choose={() => fill(props, option.value)}
        />
      ))}
    </div>
  );
};

const ChoicesElement = ({
  props,
  options,
  most,
}: {
  readonly props: Props<Of<'checkboxes'> | Of<'multi_static_select'> | Of<'multi_users_select'>>;
  readonly options: readonly AcceptedOption[];
  readonly most?: number | undefined;
}) => {
  const group = useId();
  const chosen = listIn(props);
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would take its name from a legend, the label stands outside
    <div role="group" class={options.length > 8 ? 'choices long' : 'choices'} {...ariaOf(props.labels)}>
      {options.map((option) => (
        <Choice
          key={option.value}
          kind="checkbox"
          group={group}
          option={option}
          isChosen={chosen.includes(option.value)}
          isDisabled={
            props.form.isBusy ||
            (most !== undefined && chosen.length >= most && !chosen.includes(option.value))
          }
          choose={(isOn) =>
            fill(props, isOn ? [...chosen, option.value] : chosen.filter((value) => value !== option.value))
          }
        />
      ))}
    </div>
  );
};

const MultiSelectElement = (props: Props<Of<'multi_static_select'>>) => {
  const options =
    props.element.options ?? (props.element.option_groups ?? []).flatMap((group) => group.options);
  return <ChoicesElement props={props} options={options} most={props.element.max_selected_items} />;
};

const MultiUsersElement = (props: Props<Of<'multi_users_select'>>) => {
  const options = useContext(ReaderContext).people.map(({ id, name }) => ({
    text: { type: 'plain_text' as const, text: name },
    value: id,
  }));
  return <ChoicesElement props={props} options={options} most={props.element.max_selected_items} />;
};

const PickerElement = (
  props: Props<Of<'datepicker'> | Of<'timepicker'>> & { readonly inputType: 'date' | 'time' },
) => (
  <input
    type={props.inputType}
    {...ariaOf(props.labels)}
    disabled={props.form.isBusy}
    value={textIn(props)}
    onChange={(event) => fill(props, event.currentTarget.value)}
  />
);

const TextInputElement = (props: Props<Of<'plain_text_input'>>) => {
  const { element, form, blockId } = props;
  const shared = {
    ...ariaOf(props.labels),
    placeholder: element.placeholder?.text ?? '',
    value: textIn(props),
    onInput: (event: { readonly currentTarget: HTMLInputElement | HTMLTextAreaElement }) =>
      form.change(blockId, element.action_id, event.currentTarget.value),
  };
  if (element.multiline === true) return <textarea rows={6} {...shared} />;
  return (
    <input
      type="text"
      {...shared}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' || !props.actsAtOnce) return;
        event.preventDefault();
        form.act(blockId, element.action_id, event.currentTarget.value);
      }}
    />
  );
};

const NumberElement = (props: Props<Of<'number_input'>>) => (
  <input
    type="text"
    inputMode={props.element.is_decimal_allowed ? 'decimal' : 'numeric'}
    {...ariaOf(props.labels)}
    placeholder={props.element.placeholder?.text ?? ''}
    value={textIn(props)}
    onInput={(event) => props.form.change(props.blockId, props.element.action_id, event.currentTarget.value)}
  />
);

/** One interactive element, or an image. */
export const ShowElement = ({ element, ...rest }: Props<AcceptedElement>) => {
  switch (element.type) {
    case 'button':
      return <ButtonElement element={element} {...rest} />;
    case 'overflow':
      return <OverflowElement element={element} {...rest} />;
    case 'static_select':
      return <SelectElement element={element} {...rest} />;
    case 'multi_static_select':
      return <MultiSelectElement element={element} {...rest} />;
    case 'users_select':
      return <UsersSelectElement element={element} {...rest} />;
    case 'multi_users_select':
      return <MultiUsersElement element={element} {...rest} />;
    case 'conversations_select':
      return <ChannelSelectElement element={element} {...rest} />;
    case 'radio_buttons':
      return <RadioElement element={element} {...rest} />;
    case 'checkboxes':
      return <ChoicesElement props={{ element, ...rest }} options={element.options} />;
    case 'datepicker':
      return <PickerElement element={element} inputType="date" {...rest} />;
    case 'timepicker':
      return <PickerElement element={element} inputType="time" {...rest} />;
    case 'plain_text_input':
      return <TextInputElement element={element} {...rest} />;
    case 'number_input':
      return <NumberElement element={element} {...rest} />;
    case 'image':
      return <ShowImage image={element} isSmall />;
  }
};
