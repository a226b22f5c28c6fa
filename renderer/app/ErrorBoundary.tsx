import { Component, type ErrorInfo, type ReactNode } from 'react';
import { Button } from '../ui/Button.tsx';
import { EmptyPlace } from '../ui/EmptyPlace.tsx';
import { go } from './place.ts';

interface ErrorBoundaryProps {
  readonly children: ReactNode;
  /** Changes when the mechanic goes elsewhere: the next place gets a fresh start. */
  readonly resetKey: string;
}

interface ErrorBoundaryState {
  readonly failed: Error | null;
}

/** A bug in one place leaves the window, its keys and the way to the floor in use. */
export class ErrorBoundary extends Component<ErrorBoundaryProps, ErrorBoundaryState> {
  override state: ErrorBoundaryState = { failed: null };

  static getDerivedStateFromError(failed: Error): ErrorBoundaryState {
    return { failed };
  }

  override componentDidCatch(failed: Error, info: ErrorInfo): void {
    console.error(failed, info.componentStack);
  }

  override componentDidUpdate(before: ErrorBoundaryProps): void {
    if (before.resetKey !== this.props.resetKey && this.state.failed !== null) this.setState({ failed: null });
  }

  override render(): ReactNode {
    const { failed } = this.state;
    if (failed === null) return this.props.children;
    return (
      <EmptyPlace
        compact
        title="This page could not be drawn"
        actions={
          <>
            <Button onPress={() => this.setState({ failed: null })}>Draw it again</Button>
            <Button onPress={() => go({ name: 'floor' })}>To the floor</Button>
          </>
        }
      >
        <p>Everything you wrote is kept: it was on disk before it was shown here.</p>
        <p className="soft small">{failed.message}</p>
      </EmptyPlace>
    );
  }
}
