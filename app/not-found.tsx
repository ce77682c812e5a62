export default function NotFound() {
  return (
    <main style={{ padding: '24px 16px', maxWidth: '68ch', margin: '0 auto' }}>
      <h1>There is no such page</h1>
      <p>
        The address may be old or mistyped. <a href="/">Go to the night.</a>
      </p>
    </main>
  );
}
