import { useEffect, useRef, useState } from 'preact/hooks';
import type { ShownModal } from '../page-answers.ts';
import { askServer } from './ask-server.ts';
import { Dialog } from './dialog.tsx';
import { ShowBlock } from './show-block.tsx';
import { useSurface } from './use-surface.ts';

/** The form the app opened for this person. */
export const ModalForm = (props: { readonly as: string; readonly modal: ShownModal }) => {
  const { as, modal } = props;
  // Told inside the form: what lies under a window can't be read.
  const [trouble, setTrouble] = useState('');
  const form = useSurface(as, { kind: 'view', id: modal.id }, setTrouble);
  const body = useRef<HTMLFormElement>(null);
  const close = () => form.run(() => askServer.close({ as, view: modal.id }));
  const errorCount = Object.keys(form.errors).length;

  useEffect(() => {
    if (errorCount > 0)
      body.current?.querySelector<HTMLElement>('.wrong input, .wrong textarea, .wrong select')?.focus();
  }, [errorCount]);

  // What the app put in its place is read from its beginning.
  useEffect(() => {
    body.current?.querySelector('.dialog-body')?.scrollTo(0, 0);
  }, [modal.hash]);

  return (
    <Dialog title={modal.title} close={close}>
      <form
        ref={body}
        class="dialog-form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault();
          setTrouble('');
          form.run((values) => askServer.submit({ as, view: modal.id, values }));
        }}
      >
        <section
          class={form.isBusy ? 'dialog-body busy' : 'dialog-body'}
          aria-busy={form.isBusy}
          aria-label={modal.title}
          // A long text without a field in it is scrolled by keyboard only where it can take the focus.
          {...(modal.submit === undefined ? { tabIndex: 0 } : {})}
        >
          {modal.blocks.map((block) => (
            <ShowBlock key={block.block_id} block={block} form={form} />
          ))}
        </section>
        <footer class="dialog-foot">
          <p class="foot-note" role="alert">
            {errorCount === 0
              ? trouble
              : errorCount === 1
                ? 'One field needs a look.'
                : `${errorCount} fields need a look.`}
          </p>
          <button type="button" class="button" onClick={close}>
            {modal.close}
          </button>
          {modal.submit !== undefined && (
            <button type="submit" class="button primary" disabled={form.isBusy}>
              {modal.submit}
            </button>
          )}
        </footer>
      </form>
    </Dialog>
  );
};
