import { Fragment } from 'react';
import { bracketed, formulaPieces, isFormula } from '@/lib/words/formula-pieces';
import { unitsTogether } from '@/lib/words/together';
import styles from './about.module.css';

type SymbolsProps = { readonly text: string };

/** Symbols as they are written by hand: "e_w" with its index below the line, and brackets whole on one line. */
export function Symbols({ text }: SymbolsProps) {
  return formulaPieces(unitsTogether(text)).map((piece, place) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: parts of a text never move
    <Fragment key={place}>
      {place === 0 ? '' : ' '}
      <Piece text={piece} />
    </Fragment>
  ));
}

/** Brackets go to the next line as one; only what is wider than a line is broken, and what is in it before its own brackets. */
function Piece({ text }: SymbolsProps) {
  const parts = text.includes(' ') ? bracketed(text) : null;
  if (parts === null || !isFormula(parts.inside)) return <Indices text={text} />;
  return (
    <span className={styles.whole}>
      <Indices text={parts.before} />
      <Symbols text={parts.inside} />
      <Indices text={parts.after} />
    </span>
  );
}

function Indices({ text }: SymbolsProps) {
  // Every second part is an index.
  return text.split(/_([A-Za-z0-9]+(?:,0)?)/).map((part, place) => {
    // biome-ignore lint/suspicious/noArrayIndexKey: parts of a text never move
    return place % 2 === 1 ? <sub key={place}>{part}</sub> : <Fragment key={place}>{part}</Fragment>;
  });
}
