import { Switch } from '@/components/ui/switch';
import { ROUNDED_PLACE } from '@/lib/words/sending';

type ExactPlaceProps = { readonly checked: boolean; readonly onChange: (checked: boolean) => void };

/** Whether whoever opens a link is told exactly where the track is. */
export function ExactPlace({ checked, onChange }: ExactPlaceProps) {
  return <Switch label="Give the exact place" hint={ROUNDED_PLACE} checked={checked} onChange={onChange} />;
}
