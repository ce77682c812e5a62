import type { ComponentProps } from 'react';
import styles from './button.module.css';
import { classNames } from './class-names';

type ButtonProps = ComponentProps<'button'> & {
  /** `primary` is the one act of its place; `quiet` looks like text. */
  readonly kind?: 'primary' | 'plain' | 'quiet';
  /** Heights of 48, 64, 72 and 96 px: with gloves on, what decides is the tallest. */
  readonly size?: 'normal' | 'large' | 'act' | 'decide';
  /** As wide as its place. */
  readonly wide?: boolean;
};

export function Button({
  kind = 'plain',
  size = 'normal',
  wide = false,
  className,
  type,
  ...rest
}: ButtonProps) {
  return (
    <button
      {...rest}
      type={type ?? 'button'}
      className={classNames(styles.button, styles[kind], styles[size], wide && styles.wide, className)}
    />
  );
}
