export function App() {
  return (
    <main>
      <h1>Freestroke</h1>
    </main>
  );
}
