/** The head of the desk's pages, with the way between them. */
export function DeskHead({ at, children }: { at: 'set' | 'check'; children: string }) {
  return (
    <header className="desk-head">
      <nav aria-label="Desk" className="desk-nav">
        <a href="#/">First screen</a>
        <a href="#/desk" aria-current={at === 'set' ? 'page' : undefined}>
          Set a job
        </a>
        <a href="#/desk/check" aria-current={at === 'check' ? 'page' : undefined}>
          Check returned work
        </a>
      </nav>
      <h1>{at === 'set' ? 'Set a job' : 'Check returned work'}</h1>
      <p>{children}</p>
    </header>
  );
}
