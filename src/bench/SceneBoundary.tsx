import { Component, type ReactNode } from 'react';

type Props = { readonly children: ReactNode };
type State = { readonly failed: boolean };

/** Where the picture cannot be drawn, says so in words: the job does not need it. */
export class SceneBoundary extends Component<Props, State> {
  override state: State = { failed: false };

  static getDerivedStateFromError(): State {
    return { failed: true };
  }

  override render(): ReactNode {
    if (!this.state.failed) return this.props.children;
    return (
      <div className="scene-sorry" role="note">
        <p>
          The bench cannot be drawn here: this browser gives no WebGL. Everything can be done from the lists
          beside it; the job is the same.
        </p>
      </div>
    );
  }
}
