import { useEffect, useState } from 'react';
import { Button, ComboBox, Input, Label, ListBox, ListBoxItem, Popover, Text } from 'react-aria-components';
import type { FoodOffer } from '../../app/desk.ts';
import { api } from '../api.ts';

/** Finds a food by any of its names, with the keyboard alone. The line's other readings are offered first. */
export function FoodPicker({ name, offers, onPick, onNone }: { readonly name: string; readonly offers: readonly FoodOffer[]; readonly onPick: (code: string) => void; readonly onNone: () => void }) {
  const [words, setWords] = useState(name);
  const [found, setFound] = useState<readonly FoodOffer[]>([]);
  useEffect(() => {
    if (words.trim() === '' || words === name) {
      setFound([]);
      return undefined;
    }
    const abort = new AbortController();
    const wait = setTimeout(() => {
      api.foods(words, abort.signal).then(setFound).catch(() => undefined); // An aborted or failed look-up leaves the list as it was.
    }, 80);
    return () => {
      clearTimeout(wait);
      abort.abort();
    };
  }, [words, name]);
  const items = words === name ? offers : found;
  return (
    <div className="food-picker">
      <ComboBox
        allowsCustomValue
        menuTrigger="input"
        items={items.map((offer) => ({ ...offer, id: offer.code }))}
        inputValue={words}
        onInputChange={setWords}
        onSelectionChange={(code) => {
          if (code === null) return;
          const offer = items.find((o) => o.code === code);
          setWords(offer?.tableName || (offer?.name ?? ''));
          onPick(String(code));
        }}
        allowsEmptyCollection
      >
        <Label>Food</Label>
        <div className="combo">
          <Input />
          <Button aria-label="Show foods">▾</Button>
        </div>
        <Popover className="popover">
          <ListBox className="offers" renderEmptyState={() => <p className="quiet">{words === name ? 'Type another name to search.' : 'No food of that name in the tables.'}</p>}>
            {(offer: FoodOffer & { id: string }) => (
              <ListBoxItem id={offer.id} textValue={offer.name} className="offer">
                <Text slot="label">{offer.name}{offer.state !== null && `, ${offer.state}`}</Text>
                <Text slot="description">{[offer.tableName, offer.table].filter((t) => t !== '').join(' · ')}</Text>
              </ListBoxItem>
            )}
          </ListBox>
        </Popover>
      </ComboBox>
      <Button className="plain" onPress={onNone}>None of the tables’ foods</Button>
    </div>
  );
}
