import { NightPage } from '@/components/night/night-page';

export default function Page() {
  return <NightPage />;
}
