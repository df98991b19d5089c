import { useState } from 'react';
import { Button, Dialog, DialogTrigger, Heading, Modal } from 'react-aria-components';
import type { DishVersion } from '../../app/ports.ts';
import { api } from '../api.ts';
import type { DishState } from './use-dish.ts';

/** Every kept state of a saved dish; any of them can be made the present one again. */
export function VersionsDialog({ dish, id }: { readonly dish: DishState; readonly id: string }) {
  const [versions, setVersions] = useState<readonly DishVersion[]>([]);
  return (
    <DialogTrigger onOpenChange={(open) => { if (open) void api.versions(id).then(setVersions); }}>
      <Button className="plain">Earlier</Button>
      <Modal className="modal" isDismissable>
        <Dialog className="dialog">
          {({ close }) => (
            <>
              <Heading slot="title">Kept states of this dish</Heading>
              <ul className="plain-list">
                {versions.map((v, i) => (
                  <li key={v.version}>
                    <span>{new Date(v.savedAt).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}{v.label !== null && ` · ${v.label}`}</span>
                    {i === 0 ? <span className="quiet">the present one</span> : (
                      <Button className="plain" onPress={() => { void api.restore(id, v.version).then((now) => { dish.setSaved(now); dish.setText(now.text); dish.choose(now.choices); close(); }); }}>Bring back</Button>
                    )}
                  </li>
                ))}
              </ul>
              <div className="row-actions"><Button onPress={close}>Close</Button></div>
            </>
          )}
        </Dialog>
      </Modal>
    </DialogTrigger>
  );
}
