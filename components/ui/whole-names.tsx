import styles from './whole-names.module.css';

/** A name with a hyphen in it: "Open-Meteo". */
const NAME = /(\p{Lu}[\p{L}-]*-\p{Lu}\p{L}*)/u;

/** Words in which a name with a hyphen stands on one line. They stay as they are for whoever searches or copies them. */
export function WholeNames({ text }: { readonly text: string }) {
  return text.split(NAME).map((piece, place) =>
    place % 2 === 0 ? (
      piece
    ) : (
      // biome-ignore lint/suspicious/noArrayIndexKey: pieces of one text, told apart by their place
      <span key={place} className={styles.whole}>
        {piece}
      </span>
    ),
  );
}
