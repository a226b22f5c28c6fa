/** The part of libheif's JavaScript binding that is used here; the package brings no types. */
declare module 'libheif-js/wasm-bundle.js' {
  interface HeifImage {
    get_width(): number;
    get_height(): number;
    /** 0 or 1, or a boolean, depending on the build. */
    is_primary(): number | boolean;
    display(
      into: { data: Uint8ClampedArray; width: number; height: number },
      done: (filled: { data: Uint8ClampedArray } | null) => void,
    ): void;
    free(): void;
  }
  interface HeifDecoder {
    decode(bytes: Uint8Array): HeifImage[];
    readonly decoder: { delete(): void } | null;
  }
  const libheif: { readonly HeifDecoder: new () => HeifDecoder; readonly ready?: Promise<unknown> };
  export default libheif;
}
