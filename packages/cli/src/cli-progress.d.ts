/** The part of cli-progress that is used; the package brings no types. */
declare module 'cli-progress' {
  export class SingleBar {
    constructor(options: {
      readonly format: string;
      readonly stream: NodeJS.WritableStream;
      readonly hideCursor: boolean;
      readonly clearOnComplete: boolean;
    });
    start(total: number, done: number): void;
    setTotal(total: number): void;
    update(done: number): void;
    stop(): void;
  }
  const progress: { readonly SingleBar: typeof SingleBar };
  export default progress;
}
