import type { BookContents } from './book.ts';
import { toLaw } from './CheckRow.tsx';
import { ChecksTable } from './ChecksTable.tsx';
import { LawEntry } from './LawEntry.tsx';
import './book.css';

/** The Bench book: the checks of the laws, then each law with its plot. */
export function BookPage({ book }: { book: BookContents }) {
  return (
    <main className="book">
      <header className="book-head">
        <p>
          <a href="#/">Back to the first screen</a>
        </p>
        <h1>Bench book</h1>
        <p>
          The {book.laws.length} laws by which the set is worked out, what each was checked against, and where
          this set ({book.setName}) lies on it.
        </p>
      </header>
      <ChecksTable book={book} />
      <section className="book-laws" aria-labelledby="book-laws-title">
        <h2 id="book-laws-title">The laws</h2>
        <nav aria-label="Laws">
          <ul className="book-contents">
            {book.laws.map(({ id }) => (
              <li key={id}>
                <a href={`#law-${id}`} onClick={(event) => toLaw(event, id)}>
                  {id}
                </a>
              </li>
            ))}
          </ul>
        </nav>
        {book.laws.map((law) => (
          <LawEntry key={law.id} law={law} book={book} />
        ))}
      </section>
    </main>
  );
}
