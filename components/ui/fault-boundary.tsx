'use client';

import { Component, type ReactNode } from 'react';
import { Button } from './button';
import { Notice } from './notice';

type FaultBoundaryProps = {
  /** What broke, as a person would name it: "The picture". */
  readonly part: string;
  readonly children: ReactNode;
};
type FaultState = { readonly fault: unknown };

/** A part that breaks says so in its own place; the rest of the page goes on working. */
export class FaultBoundary extends Component<FaultBoundaryProps, FaultState> {
  override state: FaultState = { fault: null };

  static getDerivedStateFromError(fault: unknown): FaultState {
    return { fault: fault ?? 'unknown' };
  }

  override render(): ReactNode {
    const { fault } = this.state;
    if (fault === null) return this.props.children;
    return (
      <Notice
        tone="caution"
        title={`${this.props.part} broke; the rest of the page works.`}
        act={<Button onClick={() => this.setState({ fault: null })}>Try again</Button>}
      >
        {fault instanceof Error ? <p>The fault, for a report: {fault.message}</p> : null}
      </Notice>
    );
  }
}
