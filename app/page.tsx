export default function Page() {
  return <main>Heavy Air</main>;
}
