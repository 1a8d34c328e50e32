import { useState } from 'preact/hooks';
import { askServer } from './ask-server.ts';
import { Dialog } from './dialog.tsx';

/** Starts the whole workspace again, after a question. */
export const ResetControl = (props: { readonly whenDone: () => void }) => {
  const [isAsking, setAsking] = useState(false);
  const [isResetting, setResetting] = useState(false);
  const [trouble, setTrouble] = useState('');

  const reset = async () => {
    setResetting(true);
    const result = await askServer.reset();
    setResetting(false);
    if (result.kind === 'failed') return setTrouble(result.message);
    setAsking(false);
    return props.whenDone();
  };

  return (
    <>
      <button type="button" class="button danger" onClick={() => setAsking(true)}>
        Reset the workspace
      </button>
      {isAsking && (
        <Dialog title="Reset the workspace?" close={() => setAsking(false)} isNarrow>
          <div class="dialog-body" aria-busy={isResetting}>
            <p>Everything written here is deleted and the clock goes back to its start.</p>
          </div>
          <footer class="dialog-foot">
            <p class="foot-note" role="alert">
              {trouble}
            </p>
            <button type="button" class="button" onClick={() => setAsking(false)}>
              Keep everything
            </button>
            <button type="button" class="button danger" disabled={isResetting} onClick={() => void reset()}>
              Reset
            </button>
          </footer>
        </Dialog>
      )}
    </>
  );
};
