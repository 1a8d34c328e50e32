import { useContext, useState } from 'preact/hooks';
import type { GestureResult, ShownGroup } from '../page-answers.ts';
import { askServer } from './ask-server.ts';
import { Dialog } from './dialog.tsx';
import { ReaderContext } from './reader.ts';

/** Who is in the workspace's user groups: an admin's part of the workspace, for trying roles that come by group. */
export const GroupsControl = (props: { readonly groups: readonly ShownGroup[] }) => {
  const { people } = useContext(ReaderContext);
  const [isOpen, setOpen] = useState(false);
  const [trouble, setTrouble] = useState('');
  /** As chosen here, while the workspace has not said so yet. */
  const [chosen, setChosen] = useState<Readonly<Record<string, readonly string[]>>>({});
  const membersOf = ({ id, memberIds }: ShownGroup) => chosen[id] ?? memberIds;

  const put = async (group: ShownGroup, personId: string, isIn: boolean) => {
    const others = membersOf(group).filter((id) => id !== personId);
    const members = isIn ? [...others, personId] : others;
    setChosen({ ...chosen, [group.id]: members });
    const result: GestureResult = await askServer.setGroup({ group: group.id, members });
    setTrouble(result.kind === 'failed' ? result.message : '');
    if (result.kind === 'failed') setChosen({});
  };

  return (
    <>
      <button
        type="button"
        class="button"
        onClick={() => {
          setChosen({});
          setOpen(true);
        }}
      >
        User groups
      </button>
      {isOpen && (
        <Dialog title="User groups" close={() => setOpen(false)} isNarrow>
          <div class="dialog-body">
            <p class="soft">As an admin of the workspace would set them. The app hears of it at once.</p>
            {props.groups.map((group) => (
              <fieldset key={group.id} class="choices">
                <legend>@{group.handle}</legend>
                {people.map(({ id, name }) => (
                  <label key={id} class="choice">
                    <input
                      type="checkbox"
                      checked={membersOf(group).includes(id)}
                      onChange={(event) => void put(group, id, event.currentTarget.checked)}
                    />
                    <span>{name}</span>
                  </label>
                ))}
              </fieldset>
            ))}
          </div>
          <footer class="dialog-foot">
            <p class="foot-note" role="alert">
              {trouble}
            </p>
            <button type="button" class="button" onClick={() => setOpen(false)}>
              Done
            </button>
          </footer>
        </Dialog>
      )}
    </>
  );
};
