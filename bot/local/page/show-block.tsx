import { useContext, useId } from 'preact/hooks';
import type { AcceptedBlock, AcceptedRichText, AcceptedTable } from '../accepted-blocks.ts';
import type { Form } from './form.ts';
import { readEntities } from './read-mrkdwn.ts';
import { ReaderContext } from './reader.ts';
import { ShowChart } from './show-chart.tsx';
import { ShowElement } from './show-element.tsx';
import { ShowImage } from './show-image.tsx';
import { ShowText, TextLink } from './show-text.tsx';

type Of<K extends AcceptedBlock['type']> = Extract<AcceptedBlock, { readonly type: K }>;
type Props<K extends AcceptedBlock['type']> = { readonly block: Of<K>; readonly form: Form };

const Section = ({ block, form }: Props<'section'>) => (
  <div class={block.accessory === undefined ? 'section' : 'section with-accessory'}>
    <div class="section-text">
      {block.text !== undefined && (
        <p>
          <ShowText text={block.text} />
        </p>
      )}
      {block.fields !== undefined && (
        <div class="fields">
          {block.fields.map((field, index) => (
            <p key={index}>
              <ShowText text={field} />
            </p>
          ))}
        </div>
      )}
    </div>
    {block.accessory !== undefined && (
      <div class="accessory">
        <ShowElement
          element={block.accessory}
          blockId={block.block_id}
          form={form}
          labels={{ spoken: spokenFor(block) }}
          actsAtOnce
        />
      </div>
    )}
  </div>
);

const spokenFor = (block: Of<'section'>): string => {
  if (
    block.accessory !== undefined &&
    'placeholder' in block.accessory &&
    block.accessory.placeholder !== undefined
  )
    return block.accessory.placeholder.text;
  return (block.text?.text ?? 'this').replace(/[*_~`]/g, '').slice(0, 80);
};

const Context = ({ block }: Props<'context'>) => (
  <div class="context">
    {block.elements.map((element, index) =>
      element.type === 'image' ? (
        <ShowImage key={index} image={element} isSmall />
      ) : (
        <span key={index}>
          <ShowText text={element} />
        </span>
      ),
    )}
  </div>
);

const Actions = ({ block, form }: Props<'actions'>) => (
  <div class="actions">
    {block.elements.map((element) => (
      <ShowElement
        key={element.action_id}
        element={element}
        blockId={block.block_id}
        form={form}
        labels={{
          spoken: 'placeholder' in element ? (element.placeholder?.text ?? 'Choose') : 'actions',
        }}
        actsAtOnce
      />
    ))}
  </div>
);

const Input = ({ block, form }: Props<'input'>) => {
  const labelId = useId();
  const noteId = useId();
  const error = form.errors[block.block_id];
  const note = error ?? block.hint?.text;
  return (
    <div class={error === undefined ? 'input' : 'input wrong'}>
      <span class="label" id={labelId}>
        {readEntities(block.label.text)}
        {block.optional === true && <span class="optional"> (optional)</span>}
      </span>
      <ShowElement
        element={block.element}
        blockId={block.block_id}
        form={form}
        labels={{
          labelledBy: labelId,
          spoken: block.label.text,
          ...(note === undefined ? {} : { describedBy: noteId }),
        }}
        actsAtOnce={block.dispatch_action === true}
      />
      {note !== undefined && (
        <p class={error === undefined ? 'hint' : 'hint error'} id={noteId}>
          {readEntities(note)}
        </p>
      )}
    </div>
  );
};

const RichPieces = ({ pieces }: { readonly pieces: AcceptedRichPieces }) => {
  const reader = useContext(ReaderContext);
  return (
    <>
      {pieces.map((piece, index) => {
        const inner =
          piece.type === 'text' ? (
            <span class="plain">{piece.text}</span>
          ) : piece.type === 'link' ? (
            <TextLink url={piece.url} label={piece.text ?? piece.url} />
          ) : piece.type === 'user' ? (
            <span class="mention">@{reader.nameOf(piece.user_id)}</span>
          ) : (
            <span class="mention">#{reader.channelNameOf(piece.channel_id)}</span>
          );
        const styles = piece.style ?? {};
        const code = styles.code === true ? <code>{inner}</code> : inner;
        const strike = styles.strike === true ? <s>{code}</s> : code;
        const italic = styles.italic === true ? <em>{strike}</em> : strike;
        return <span key={index}>{styles.bold === true ? <strong>{italic}</strong> : italic}</span>;
      })}
    </>
  );
};
type AcceptedRichPieces = Extract<
  AcceptedRichText['elements'][number],
  { readonly type: 'rich_text_section' }
>['elements'];

const RichPart = ({ part }: { readonly part: AcceptedRichText['elements'][number] }) => {
  switch (part.type) {
    case 'rich_text_section':
      return (
        <p>
          <RichPieces pieces={part.elements} />
        </p>
      );
    case 'rich_text_quote':
      return (
        <blockquote>
          <RichPieces pieces={part.elements} />
        </blockquote>
      );
    case 'rich_text_preformatted':
      return (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: long lines scroll sideways by keyboard too
        <pre tabIndex={0}>
          <RichPieces pieces={part.elements} />
        </pre>
      );
    case 'rich_text_list': {
      const items = part.elements.map((item, place) => (
        <li key={place}>
          <RichPieces pieces={item.elements} />
        </li>
      ));
      return part.style === 'ordered' ? <ol>{items}</ol> : <ul>{items}</ul>;
    }
  }
};

const RichText = ({ block }: { readonly block: AcceptedRichText }) => (
  <div class="rich">
    {block.elements.map((part, index) => (
      <RichPart key={index} part={part} />
    ))}
  </div>
);

const Cell = ({ cell }: { readonly cell: AcceptedTable['rows'][number][number] }) =>
  cell.type === 'rich_text' ? <RichText block={cell} /> : <span>{cell.text}</span>;

const Table = ({ block }: Props<'table'>) => {
  const [head = [], ...rows] = block.rows;
  const classOf = (column: number) => block.column_settings?.[column]?.align ?? 'left';
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table scrolls sideways by keyboard too
    <section class="table-scroll" tabIndex={0} aria-label="Table">
      <table class="grid">
        <thead>
          <tr>
            {head.map((cell, column) => (
              <th scope="col" class={classOf(column)} key={column}>
                <Cell cell={cell} />
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, index) => (
            <tr key={index}>
              {row.map((cell, column) => (
                <td class={classOf(column)} key={column}>
                  <Cell cell={cell} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};

/** One block of a message, modal or home. */
export const ShowBlock = ({ block, form }: { readonly block: AcceptedBlock; readonly form: Form }) => {
  switch (block.type) {
    case 'header':
      return <h3 class="heading">{readEntities(block.text.text)}</h3>;
    case 'section':
      return <Section block={block} form={form} />;
    case 'context':
      return <Context block={block} form={form} />;
    case 'divider':
      return <hr />;
    case 'actions':
      return <Actions block={block} form={form} />;
    case 'input':
      return <Input block={block} form={form} />;
    case 'image':
      return (
        <figure class="image">
          {block.title !== undefined && <figcaption>{readEntities(block.title.text)}</figcaption>}
          <ShowImage image={block} />
        </figure>
      );
    case 'rich_text':
      return <RichText block={block} />;
    case 'table':
      return <Table block={block} form={form} />;
    case 'data_visualization':
      return <ShowChart block={block} />;
  }
};
