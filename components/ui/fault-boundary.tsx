'use client';

import { Component, type ReactNode } from 'react';
import { Button } from './button';
import { Notice } from './notice';

type FaultBoundaryProps = (
  | {
      /** What broke, as a person would name it: "The picture". */
      readonly part: string;
    }
  | {
      /** What stands there instead. */
      readonly instead: (fault: unknown, retry: () => void) => ReactNode;
    }
) & { readonly children: ReactNode };
type FaultState = { readonly fault: unknown };

/** A part that breaks says so in its own place; the rest of the page goes on working. */
export class FaultBoundary extends Component<FaultBoundaryProps, FaultState> {
  override state: FaultState = { fault: null };

  static getDerivedStateFromError(fault: unknown): FaultState {
    return { fault: fault ?? 'unknown' };
  }

  readonly #retry = (): void => this.setState({ fault: null });

  override render(): ReactNode {
    const { fault } = this.state;
    if (fault === null) return this.props.children;
    if ('instead' in this.props) return this.props.instead(fault, this.#retry);
    return (
      <Notice
        tone="caution"
        title={`${this.props.part} broke; the rest of the page works.`}
        act={<Button onClick={this.#retry}>Try again</Button>}
      >
        {fault instanceof Error ? <p>The fault, for a report: {fault.message}</p> : null}
      </Notice>
    );
  }
}
