import { WentWrong } from '@/components/shell/went-wrong';

/** What the server sends where it could not answer. */
export default function Failed() {
  return <WentWrong error={null} retry={() => window.location.reload()} />;
}
