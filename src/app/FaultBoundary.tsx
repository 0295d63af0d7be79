import { Component, type ReactNode } from 'react';

interface Props {
  children: ReactNode;
  /** Shown in place of what failed. */
  fallback: ReactNode;
  onFault?: () => void;
}

/** Keeps a failure in one part of the page from taking the rest with it. */
export class FaultBoundary extends Component<Props, { isFaulty: boolean }> {
  override state = { isFaulty: false };

  static getDerivedStateFromError(): { isFaulty: boolean } {
    return { isFaulty: true };
  }

  override componentDidCatch(): void {
    this.props.onFault?.();
  }

  override render(): ReactNode {
    return this.state.isFaulty ? this.props.fallback : this.props.children;
  }
}
